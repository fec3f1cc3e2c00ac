// What is fed with any bytes: one function for each way by which a person's input comes in. Each reads its
// input as the program does and throws BrokenLaw where the answer breaks a law; nothing else may come out.
#pragma once

#include <string_view>

namespace fillside::fuzz {

void scene_text(std::string_view input);   ///< a scene file
void scene_edits(std::string_view input);  ///< --set, one on a line, of a scene with a bit of everything
void numbers(std::string_view input);      ///< a number with its unit, as every kind of quantity
void dates(std::string_view input);        ///< a date with its time, and a clock position
void obj_model(std::string_view input);    ///< a material file, four dashes, an OBJ file
void pictures(std::string_view input);     ///< a PNG or JPEG file
void set_card(std::string_view input);     ///< a set card as `plan --back` takes it
void wishes(std::string_view input);       ///< --want and --free, one on a line

}  // namespace fillside::fuzz
