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

/// zsh completes in a terminal alone, here one of its own making.
constexpr const char* kAskZsh = R"(
zmodload zsh/zpty
zpty it "ZDOTDIR=$PWD TERM=dumb zsh -d -i"
zpty -r it said '*ready*'
zpty -w -n it "$1"$'\t'
zpty -r it said '*<<*>>*'
print -rn -- ${${said##*<<}%%>>*}
)";
constexpr const char* kZshrc = R"(
fpath=($PWD/functions $fpath)
autoload -Uz compinit
compinit -u -D
completed() { zle complete-word; print -r -- "<<$BUFFER>>" }
zle -N completed
bindkey '^I' completed
print ready
)";

/// Once for each of these shells that is there.
class CompletedBy : public Reference, public testing::WithParamInterface<std::string> {
 protected:
  /// The word that the shell makes of the line's last; empty when it knows none.
  std::string word_for(const std::string& line) const {
    if (GetParam() == "fish") {
      write("completion", run({"--completion", "fish"}).out);
      const std::string said = said_by("HOME=. fish -N -c 'source completion; complete -C \"" + line + "\"'");
      return said.substr(0, said.find_first_of("\t\n"));
    }
    std::filesystem::create_directory(at("functions"));
    write("functions/_fillside", run({"--completion", "zsh"}).out);
    write(".zshrc", kZshrc);
    write("ask", kAskZsh);
    const std::string said = said_by("timeout 120 zsh -f ask '" + line + "'");
    if (said == line) return "";
    const std::string words = said.substr(0, said.find_last_not_of(' ') + 1);
    return words.substr(words.rfind(' ') + 1);
  }
};
GTEST_ALLOW_UNINSTANTIATED_PARAMETERIZED_TEST(CompletedBy);

TEST_P(CompletedBy, a_shell_finds_verbs_their_options_and_those_before_a_verb) {
  EXPECT_EQ(word_for("fillside cal"), "calendar");
  EXPECT_EQ(word_for("fillside meter --pre"), "--precision");
  EXPECT_EQ(word_for("fillside meter -q --pre"), "--precision");
  EXPECT_EQ(word_for("fillside --comp"), "--completion");
  EXPECT_EQ(word_for("fillside calendar --shad"), "") << "another verb's";
}

std::vector<std::string> shells_that_are_there() {
  std::vector<std::string> shells{"fish", "zsh"};
  std::erase_if(shells, [](const std::string& shell) { return !is_installed(shell); });
  return shells;
}
INSTANTIATE_TEST_SUITE_P(Completion, CompletedBy, testing::ValuesIn(shells_that_are_there()),
                         [](const auto& shell) { return shell.param; });

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
