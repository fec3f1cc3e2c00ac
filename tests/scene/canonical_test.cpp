#include "libsim/scene/canonical.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "libsim/scene/sections.h"
#include "libsim/scene/wording.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

/// A visitor of the field tables that gives every member a random value its field allows.
class RandomFill {
 public:
  void operator()(const Field& field, bool& out) const { (void)field, out = *rc::gen::arbitrary<bool>(); }
  void operator()(const Field& f, int& out) const {
    out = *rc::gen::inRange(static_cast<int>(f.least), static_cast<int>(std::min(f.most, 1e6)));
  }
  void operator()(const Field& f, double& out) const { out = number(f); }
  void operator()(const Field& f, std::string& out) const {
    const auto choices = split_choices(f.choices);
    static const std::vector<std::string> kTexts{
        "", "a", "two words", "q\"uo\\te", "caf\xC3\xA9", "tab\there", "\x01\x7F#="};
    out = *rc::gen::elementOf(choices.empty() ? kTexts : choices);
  }
  void operator()(const Field&, Clock& out) const { out.hours = fraction() * 12.0; }
  void operator()(const Field&, Colour& out) const {
    for (int i = 0; i < 3; ++i) out.linear[i] = srgb_decoded(*rc::gen::inRange(0, 256) / 255.0);
  }
  void operator()(const Field&, Instant& out) const {
    out = {*rc::gen::inRange(1950, 2101),  *rc::gen::inRange(1, 13), *rc::gen::inRange(1, 29),
           *rc::gen::inRange(0, 24),       *rc::gen::inRange(0, 60), *rc::gen::inRange(0, 60000) / 1000.0,
           15 * *rc::gen::inRange(-48, 57)};
  }
  void operator()(const Field&, Names& out) const { out = {{"a b", "light oak"}, {"c", "\"x\""}, {"", "y"}}; }
  template <class D>
  void operator()(const Field& f, Quantity<D>& out) const {
    out.si = number(f);
  }
  template <class T>
  void operator()(const Field& f, std::optional<T>& out) const {
    out.reset();
    if (*rc::gen::arbitrary<bool>()) (*this)(f, out.emplace());
  }

 private:
  static double fraction() {
    return static_cast<double>(*rc::gen::inRange<std::uint64_t>(0, (1ull << 53) + 1)) * 0x1p-53;
  }
  /// Half of them as people write numbers, half with every bit in use.
  static double number(const Field& f) {
    const double least = std::max(f.least, -1e6), most = std::min(f.most, 1e6);
    const double any = least + (most - least) * fraction();
    const double round = std::round(any * 100.0) / 100.0;
    return *rc::gen::arbitrary<bool>() && round >= least && round <= most ? round : any;
  }
};

Description random_description() {
  Description description;
  int count = 0;
  each_section(description, [&]<class S>(const Heading&, S& section) {
    if constexpr (SectionList<S>) {
      section.resize(static_cast<std::size_t>(*rc::gen::inRange(0, 3)));
      for (auto& one : section) {
        fields(RandomFill{}, one);
        if constexpr (Named<typename S::value_type>) one.name = "thing " + std::to_string(++count);
      }
    } else {
      fields(RandomFill{}, section);
    }
  });
  for (ItemSection& item : description.items) item.subject = *rc::gen::arbitrary<bool>();
  return description;
}

RC_GTEST_PROP(CanonicalProperty, AnyDescriptionReadsBackEqualInBothForms, ()) {
  const Description description = random_description();
  for (const bool all_defaults : {false, true}) {
    const std::string text = canonical_scene(description, all_defaults);
    if (text.empty()) continue;
    const Description back = described(text);
    RC_ASSERT(all_values(back) == all_values(description));
    RC_ASSERT(canonical_scene(back, all_defaults) == text);
    RC_ASSERT(scene_hash(back) == scene_hash(description));
  }
}

TEST(Canonical, ShippedScenesReadBackEqual) {
  const auto paths = scenes_in("scenes");
  EXPECT_GE(paths.size(), 4u);
  for (const std::string& path : paths)
    for (const bool all_defaults : {false, true}) {
      const Description description = described(bytes_of(path));
      const Description back = described(canonical_scene(description, all_defaults));
      EXPECT_EQ(all_values(back), all_values(description)) << path;
    }
}

TEST(Canonical, TheShortFormSaysOnlyWhatDiffers) {
  EXPECT_EQ(
      canonical_scene(
          described("[room]\nwalls = 0.6\n[board]\nlean = \"10 deg\"\n[[prop]]\nkind = \"egg\"\n"), false),
      "[[prop]]\nname = \"egg\"\nkind = \"egg\"\n\n[[board]]\nname = \"board\"\nlean = \"10 deg\"\n");
}

TEST(Canonical, TheFullFormHasEveryKeyWithItsHelp) {
  const std::string text = canonical_scene(described("[[window]]\n"), true);
  for (const std::string& key : keys_of<WindowSection>())
    EXPECT_NE(text.find(key + " ="), std::string::npos) << key;
  EXPECT_THAT(text, testing::HasSubstr("# width =                            # clear width of the opening"));
  EXPECT_THAT(text, testing::HasSubstr("walls = 0.6                          # reflectance of the walls"));
}

TEST(Canonical, LengthsInOtherUnitsKeepTheirLastBit) {
  const Description description = described("[[window]]\nwidth = \"35 1/3 in\"\nheight = \"29 1/7 in\"\n");
  const Description back = described(canonical_scene(description, false));
  EXPECT_EQ(back.windows[0].width->si, description.windows[0].width->si);
  EXPECT_EQ(back.windows[0].height->si, description.windows[0].height->si);
}

TEST(SceneHash, IgnoresCommentsOrderAndSpelling) {
  const std::string hash =
      scene_hash(described("[room]\nwalls = 0.5\nfloor = 0.1\n[[window]]\nclock = \"9:30\"\n"));
  EXPECT_EQ(hash, scene_hash(described("# x\n[window]\nclock = 9.5\n[room]\nfloor = 1e-1\nwalls = 0.50\n")));
  EXPECT_NE(hash, scene_hash(described("[room]\nwalls = 0.5\nfloor = 0.1\n[[window]]\nclock = \"9:31\"\n")));
}

TEST(SceneHash, IsFnv1aOfTheShortForm) {
  // The empty text hashes to the offset basis: test vectors of the FNV draft, appendix C.
  EXPECT_EQ(canonical_scene(Description{}, false), "");
  EXPECT_EQ(scene_hash(Description{}), "cbf29ce484222325");
  // A second opinion: the same text through the algorithm in another language.
  EXPECT_EQ(canonical_scene(described("[room]\nwalls = 0.5\n"), false), "[room]\nwalls = 0.5\n");
  EXPECT_EQ(scene_hash(described("[room]\nwalls = 0.5\n")), "a56b228c1da479e1");
}

}  // namespace
}  // namespace fillside
