// The library inside somebody's program that has set a German locale, for C and for C++: what it reads and
// writes does not change by a byte.
#include <gtest/gtest.h>

#include <clocale>
#include <cstdlib>
#include <locale>

#include "libsim/geometry/obj_mesh.h"
#include "libsim/scene/canonical.h"
#include "libsim/scene/load.h"
#include "libsim/writers/atomic_file.h"
#include "libsim/writers/printed_page.h"
#include "tests/writers/temporary_folder.h"

namespace fillside {
namespace {

struct CommaPoint : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

std::string all_that_is_read_and_written(const TemporaryFolder& folder) {
  std::vector<Problem> warnings;
  const Description set = load_description(FILLSIDE_SOURCE_DIR "/scenes/citrus_tart.toml",
                                           {"board.near.distance=18.5 cm"}, warnings);
  std::string all = canonical_scene(set, true) + scene_hash(set);
  write_file(folder / "crumb.obj", "v 0.5 1.25 1e-3\nv 1.5 0 0\nv 0 1234.5 0\nf 1 2 3\n");
  for (const ObjGroup& group : load_obj((folder / "crumb.obj").string(), 0.001, 'z').groups)
    for (const Point& corner : group.mesh.corners)
      for (const double part : corner) all += part == 1.2345 || part == 0.00125 ? '\1' : '\2';
  const PrintedPage page{1234, 40, [](Drawing& drawing) {
                           drawing.fill(Box{0.25, 1.5, 1234.75, 3.125}, {0.5, 0.25, 0.125});
                         }};
  return all + bytes_of(page, SheetFile::svg, {}) + bytes_of(page, SheetFile::pdf, {});
}

TEST(Locale, NothingThatIsReadOrWrittenMindsIt) {
  const TemporaryFolder folder;
  const std::string before = all_that_is_read_and_written(folder);
  const std::string place = (folder / "de_DE.UTF-8").string();
  ASSERT_EQ(std::system(("localedef -i de_DE -f UTF-8 '" + place + "' >/dev/null 2>&1").c_str()), 0)
      << "localedef and its sources are Debian's package locales";
  ::setenv("LOCPATH", (folder / "").c_str(), 1);
  ASSERT_NE(std::setlocale(LC_ALL, "de_DE.UTF-8"), nullptr);
  ASSERT_EQ(std::strtod("1,5", nullptr), 1.5) << "the locale is in force";
  const std::locale usual = std::locale::global(std::locale(std::locale::classic(), new CommaPoint));
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // the C++ locale has set C's to its own
  const std::string after = all_that_is_read_and_written(folder);
  std::locale::global(usual);
  std::setlocale(LC_ALL, "C");
  EXPECT_EQ(before, after);
  EXPECT_NE(before.find('\1'), std::string::npos);
}

}  // namespace
}  // namespace fillside
