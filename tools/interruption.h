// Ctrl-C and its like: the program says what it has written, and ends as the shell expects.
#pragma once

namespace fillside::tools {

/// Call once, before any thread is started. From then on SIGINT and SIGTERM end the program between two
/// files, with one line on standard error; a signal that was ignored when the program began (nohup, a shell's
/// background) stays ignored.
void watch_for_interruption();

}  // namespace fillside::tools
