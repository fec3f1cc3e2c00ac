// The words of an OBJ text, a logical line at a time, each with its place.
#pragma once

#include <string_view>
#include <vector>

namespace fillside {

struct ObjWord {
  std::string_view text;
  int line, column;  ///< from 1; columns count bytes
};

class ObjWords {
 public:
  explicit ObjWords(std::string_view text);

  /// Words of the next line that has any, comments left out, lines that end in a backslash joined. False at
  /// the end.
  bool next_line(std::vector<ObjWord>& words);

  /// The written line in which a word stands, for messages.
  std::string_view written_line(const ObjWord& word) const;

 private:
  bool at_line_end() const { return at_ >= text_.size() || text_[at_] == '\n' || text_[at_] == '\r'; }
  bool skip_continuation();
  void skip_line_end();
  void take_word(std::vector<ObjWord>& words);

  std::string_view text_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1;
};

}  // namespace fillside
