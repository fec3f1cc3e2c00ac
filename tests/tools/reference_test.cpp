// Man pages, completion and schema: nothing that --help shows may be missing there, and the shipped scenes
// pass.
#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "libsim/scene/sections.h"
#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

class Reference : public ProgramTest {
 protected:
  std::vector<std::string> verbs() const {
    std::vector<std::string> found;
    const std::string help = run({"--help"}).out;
    const std::size_t from = help.find("Verbs:"), to = help.find("Words:");
    std::istringstream in(help.substr(from, to - from));
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line) && line.starts_with("  "))
      if (line[2] != ' ') found.push_back(line.substr(2, line.find(' ', 2) - 2));
    return found;
  }
  /// "--precision", as the help of the verb names its options.
  std::set<std::string> options_of(const std::string& verb) const {
    static const std::regex option(R"((?:^|\n)  (?:-\w, )?(--[a-z-]+))");
    const std::string help = run({verb, "--help"}).out;
    std::set<std::string> found;
    for (std::sregex_iterator i(help.begin(), help.end(), option), end; i != end; ++i) found.insert((*i)[1]);
    return found;
  }
  /// What the shell's own tool says; its status must be 0.
  std::string said_by(const std::string& command) const {
    const std::string line = "cd '" + at("").string() + "' && " + command + " >said 2>&1";
    EXPECT_EQ(std::system(line.c_str()), 0) << command << '\n' << bytes_of(at("said"));
    return bytes_of(at("said"));
  }
};

bool is_installed(const std::string& shell) {
  return std::system(("command -v " + shell + " >/dev/null").c_str()) == 0;
}

TEST_F(Reference, every_option_of_every_verb_is_in_the_manual_and_in_each_completion) {
  const std::string manual = run({"--manual", "fillside"}).out;
  const std::vector<std::string> all = verbs();
  EXPECT_GE(all.size(), 11u);
  for (const std::string& verb : all) {
    EXPECT_THAT(manual, HasSubstr("# FILLSIDE " + verb + "\n"));
    const auto start = manual.find("# FILLSIDE " + verb + "\n");
    const std::string page = manual.substr(start, manual.find("\n# ", start + 1) - start);
    EXPECT_FALSE(options_of(verb).empty()) << verb;
    for (const std::string& option : options_of(verb)) EXPECT_THAT(page, HasSubstr(option)) << verb;
    for (const char* shell : {"bash", "zsh", "fish"}) {
      const std::string script = run({"--completion", shell}).out;
      EXPECT_THAT(script, HasSubstr(verb)) << shell;
      for (const std::string& option : options_of(verb))
        EXPECT_THAT(script, HasSubstr(std::string(shell) == "fish" ? "-l " + option.substr(2) : option))
            << shell << ' ' << verb;
    }
  }
}

TEST_F(Reference, bash_completes_a_verbs_options) {
  write("completion", run({"--completion", "bash"}).out);
  const std::string said = said_by(
      "bash -c '. ./completion; COMP_WORDS=(fillside meter --pre); COMP_CWORD=2; _fillside; echo "
      "\"${COMPREPLY[@]}\"; "
      "COMP_WORDS=(fillside cal); COMP_CWORD=1; _fillside; echo \"${COMPREPLY[@]}\"'");
  EXPECT_EQ(said, "--precision\ncalendar\n");
}

TEST_F(Reference, bash_leaves_a_files_name_with_a_blank_whole) {
  write("completion", run({"--completion", "bash"}).out);
  write("my table.toml", "");
  EXPECT_EQ(
      said_by("bash -c '. ./completion; complete -p fillside; COMP_WORDS=(fillside meter my); COMP_CWORD=2; "
              "_fillside; echo \"${#COMPREPLY[@]}: ${COMPREPLY[0]}\"'"),
      "complete -o filenames -F _fillside fillside\n1: my table.toml\n");
}

TEST_F(Reference, fish_completes_verbs_and_options_where_it_is_installed) {
  if (!is_installed("fish")) GTEST_SKIP() << "no fish";
  write("completion", run({"--completion", "fish"}).out);
  const auto completed = [&](const std::string& line) {
    return said_by("HOME=. fish -N -c 'source completion; complete -C \"" + line + "\"'");
  };
  EXPECT_THAT(completed("fillside cal"), StartsWith("calendar\t"));
  EXPECT_THAT(completed("fillside meter --pre"), StartsWith("--precision\t"));
  EXPECT_THAT(completed("fillside --comp"), StartsWith("--completion\t"));
  EXPECT_THAT(completed("fillside calendar --shad"), IsEmpty()) << "another verb's";
}

// In a terminal of zsh's own making. Its completion is one that an interactive shell alone has.
TEST_F(Reference, zsh_completes_verbs_and_options_where_it_is_installed) {
  if (!is_installed("zsh")) GTEST_SKIP() << "no zsh";
  std::filesystem::create_directory(at("functions"));
  write("functions/_fillside", run({"--completion", "zsh"}).out);
  write(".zshrc",
        "fpath=($PWD/functions $fpath)\nautoload -Uz compinit\ncompinit -u -D\n"
        "completed() { zle complete-word; print -r -- \"<<$BUFFER>>\"; BUFFER= }\n"
        "zle -N completed\nbindkey '^I' completed\nprint ready\n");
  write("ask",
        "zmodload zsh/zpty\nzpty it \"ZDOTDIR=$PWD TERM=dumb zsh -d -i\"\nzpty -r it said '*ready*'\n"
        "for line in \"$@\"; do\n  zpty -w -n it \"$line\"$'\\t'\n  zpty -r it said '*<<*>>*'\n"
        "  print -r -- ${${said##*<<}%%>>*}\ndone\n");
  EXPECT_EQ(said_by("timeout 120 zsh -f ask 'fillside cal' 'fillside meter --pre' 'fillside --comp' "
                    "'fillside calendar --shad' 'fillside meter func'"),
            "fillside calendar \nfillside meter --precision \nfillside --completion \n"
            "fillside calendar --shad\nfillside meter functions/\n");
}

TEST_F(Reference, both_man_pages_are_taken_by_scdoc) {
  for (const char* page : {"fillside", "fillside-scene"}) {
    write("page.scd", run({"--manual", page}).out);
    const std::string roff = said_by("scdoc <page.scd");
    EXPECT_THAT(roff, HasSubstr(".SH NAME"));
  }
}

TEST_F(Reference, every_key_is_in_the_manual_and_in_the_schema) {
  const std::string manual = run({"--manual", "fillside-scene"}).out;
  const auto schema = nlohmann::json::parse(run({"scene", "--schema"}).out);
  Description empty;
  each_section(empty, [&]<class S>(const Heading& heading, const S&) {
    const auto check = [&]<class One>(const One&) {
      const auto& properties = schema["$defs"][std::string(heading.name)]["properties"];
      for (const std::string& key : keys_of<One>()) {
        EXPECT_TRUE(properties.contains(key)) << heading.name << '.' << key;
        std::string escaped = key;
        for (std::size_t i = 0; (i = escaped.find('_', i)) != std::string::npos; i += 2)
          escaped.insert(i, "\\");
        EXPECT_THAT(manual, HasSubstr("\n*" + escaped)) << heading.name;
      }
    };
    if constexpr (SectionList<S>)
      check(typename S::value_type{});
    else
      check(S{});
  });
}

// python3-jsonschema is the judge: JSON Schema draft 2020-12.
TEST_F(Reference, the_schema_accepts_all_shipped_scenes_and_refuses_what_the_reader_refuses) {
  write("schema.json", run({"scene", "--schema"}).out);
  write("judge.py", R"(import datetime, glob, json, sys, tomllib
import jsonschema
schema = json.load(open('schema.json'))
jsonschema.Draft202012Validator.check_schema(schema)
judge = jsonschema.Draft202012Validator(schema)
def plain(x):
    if isinstance(x, dict): return {k: plain(v) for k, v in x.items()}
    if isinstance(x, list): return [plain(v) for v in x]
    return x.isoformat() if isinstance(x, (datetime.datetime, datetime.date)) else x
for path in sys.argv[1:]:
    faults = list(judge.iter_errors(plain(tomllib.load(open(path, 'rb')))))
    print(path.rsplit('/', 1)[-1], 'refused' if faults else 'accepted', [f.message[:90] for f in faults][:2] or '')
)");
  const std::string shipped =
      said_by("/usr/bin/python3 judge.py $(find '" FILLSIDE_SOURCE_DIR "/scenes' -name '*.toml')");
  EXPECT_THAT(shipped, HasSubstr("citrus_tart.toml accepted"));
  EXPECT_THAT(shipped, testing::Not(HasSubstr("refused"))) << shipped;
  const std::string bad = said_by(
      "/usr/bin/python3 judge.py $(find '" FILLSIDE_SOURCE_DIR
      "/tests/bad_scenes' -name '*.toml' | grep -E "
      "'/(bad_colour|clock_as_number_too_large|missing_unit|"
      "number_where_text|text_where_number|unit_of_another_kind|unknown_(cloth|key|section|surface|unit))')");
  EXPECT_THAT(bad, HasSubstr("refused"));
  EXPECT_THAT(bad, testing::Not(HasSubstr("accepted"))) << bad;
}

TEST_F(Reference, other_shells_and_pages_are_refused) {
  EXPECT_EQ(run({"--completion", "tcsh"}).status, 2);
  EXPECT_EQ(run({"--completion"}).status, 2);
  EXPECT_EQ(run({"--manual", "nothing"}).status, 2);
}

}  // namespace
}  // namespace fillside
