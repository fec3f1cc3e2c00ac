// How messages quote what a person wrote, list what may be written, and guess what was meant.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/problem.h"

namespace fillside {

/// The text in double quotes; control characters become '?' and long texts are cut, so that a message can
/// neither move the cursor nor fill the screen.
std::string in_quotes(std::string_view text);
/// The same without the quotes.
std::string tame(std::string_view text);
/// Only the control characters become '?'.
std::string without_controls(std::string_view text);

/// A length as people write it: metres from one metre on, centimetres below.
std::string length_text(double length_m);
/// The same, never less: rounded up to millimetres, from 10 cm on to centimetres. For "move it at least ...".
std::string length_text_up(double length_m);

/// `a, b or c`; empty when there are none.
std::string listed(std::span<const std::string> words);

/// The parts of "a|b|c".
std::vector<std::string> split_choices(std::string_view choices);

/// Insertions, deletions, substitutions and swaps of neighbours needed to turn one text into the other, no
/// part edited twice. Case counts as nothing. Damerau, "A technique for computer detection and correction of
/// spelling errors", CACM 7(3), 1964, in the optimal string alignment form.
std::size_t edit_distance(std::string_view from, std::string_view to);

/// The nearest of the words if it is within max(2, a third of the word's length); empty otherwise.
std::string nearest(std::string_view word, std::span<const std::string> words);

/// `did you mean width?`, or else `lead: a, b or c`, or that there are none.
std::string suggestion(std::string_view word, std::span<const std::string> words, std::string_view lead);

/// An error at a place. Control characters, as names of a scene may hold, become '?'.
Problem problem_at(Place place, std::string_view message, std::string_view remedy = {});

/// Gives each problem that stands in `file` its line of `text`, for the caret.
void attach_source_lines(std::vector<Problem>& problems, std::string_view file, std::string_view text);

}  // namespace fillside
