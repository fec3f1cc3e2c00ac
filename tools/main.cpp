// The command `fillside`: reads the words, runs the verb, turns every failure into one clear message and a
// status.
#include <array>
#include <exception>
#include <new>
#include <string_view>
#include <utility>

#include "libsim/base/problem.h"
#include "tools/arguments.h"
#include "tools/exit_status.h"
#include "tools/interruption.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace {

using namespace fillside;
using namespace fillside::tools;

int run(const Arguments& arguments) {
  using Verb = std::pair<std::string_view, int (*)(const Arguments&)>;
  static constexpr std::array kVerbs{
      Verb{"scene", run_scene},   Verb{"check", run_check},       Verb{"meter", run_meter},
      Verb{"map", run_map},       Verb{"render", run_render},     Verb{"compare", run_compare},
      Verb{"series", run_series}, Verb{"place", run_place},       Verb{"sensitivity", run_sensitivity},
      Verb{"rules", run_rules},   Verb{"calendar", run_calendar}, Verb{"plan", run_plan},
      Verb{"report", run_report}, Verb{"lesson", run_lesson}};
  for (const auto& [name, verb] : kVerbs)
    if (arguments.verb == name) return verb(arguments);
  return kBadUsage;
}

}  // namespace

int main(int count, char** words) {
  hold_standard_streams();
  watch_for_interruption();
  try {
    const auto read = read_arguments(count, words);
    if (const auto* nothing = std::get_if<NothingToRun>(&read)) {
      if (nothing->to_stderr)
        note_text(nothing->text);
      else
        say(nothing->text);
      finish_answer();
      return nothing->status;
    }
    const int status = run(std::get<Arguments>(read));
    finish_answer();
    return status;
  } catch (const SceneError& error) {
    show(error.problems());
    return kBadInput;
  } catch (const WriteError& error) {
    note(std::string("fillside: ") + error.what());
    return kCannotWrite;
  } catch (const std::bad_alloc&) {
    note("fillside: not enough memory for this set; fewer cells, pixels or triangles need less");
    return kBadInput;
  } catch (const std::exception& error) {
    note(std::string("fillside: ") + error.what());
    return kBadInput;
  }
}
