// One function a verb; each returns the exit status.
// To add one: a file verb_NAME.cpp with its function, a line here and in main.cpp, its options in
// arguments.cpp.
#pragma once

#include "tools/arguments.h"

namespace fillside::tools {

int run_scene(const Arguments& arguments);
int run_check(const Arguments& arguments);
int run_meter(const Arguments& arguments);
int run_map(const Arguments& arguments);
int run_render(const Arguments& arguments);
int run_compare(const Arguments& arguments);
int run_series(const Arguments& arguments);
int run_place(const Arguments& arguments);
int run_sensitivity(const Arguments& arguments);
int run_rules(const Arguments& arguments);
int run_calendar(const Arguments& arguments);
int run_plan(const Arguments& arguments);
int run_report(const Arguments& arguments);
int run_lesson(const Arguments& arguments);

}  // namespace fillside::tools
