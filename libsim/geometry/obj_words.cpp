#include "libsim/geometry/obj_words.h"

namespace fillside {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\v' || c == '\f'; }

}  // namespace

ObjWords::ObjWords(std::string_view text) : text_(text) {
  if (text_.starts_with(kByteOrderMark)) text_.remove_prefix(kByteOrderMark.size());
}

void ObjWords::skip_line_end() {
  if (at_ >= text_.size()) return;
  at_ += text_.substr(at_).starts_with("\r\n") ? 2 : 1;
  line_start_ = at_;
  ++line_;
}

bool ObjWords::skip_continuation() {
  const std::string_view rest = text_.substr(at_);
  if (!rest.starts_with("\\\n") && !rest.starts_with("\\\r")) return false;
  ++at_;
  skip_line_end();
  return true;
}

void ObjWords::take_word(std::vector<ObjWord>& words) {
  const std::size_t start = at_;
  while (!at_line_end() && !is_space(text_[at_])) {
    const std::string_view rest = text_.substr(at_, 2);
    if (rest == "\\\n" || rest == "\\\r") break;
    ++at_;
  }
  words.push_back({text_.substr(start, at_ - start), line_, static_cast<int>(start - line_start_) + 1});
}

bool ObjWords::next_line(std::vector<ObjWord>& words) {
  words.clear();
  while (words.empty() && at_ < text_.size()) {
    while (!at_line_end()) {
      if (is_space(text_[at_])) {
        ++at_;
      } else if (text_[at_] == '#') {
        while (!at_line_end()) ++at_;
      } else if (!skip_continuation()) {
        take_word(words);
      }
    }
    skip_line_end();
  }
  return !words.empty();
}

std::string_view ObjWords::written_line(const ObjWord& word) const {
  const auto word_start = static_cast<std::size_t>(word.text.data() - text_.data());
  const std::string_view from = text_.substr(word_start - static_cast<std::size_t>(word.column - 1));
  return from.substr(0, from.find_first_of("\r\n"));
}

}  // namespace fillside
