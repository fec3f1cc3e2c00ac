// How options are declared to the reader of words: it splits, we judge, so that messages are ours.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

namespace fillside::tools {

using Take = std::function<void(const std::string&)>;

/// An option with one value, kept as text.
CLI::Option& add_value(CLI::App& verb, const std::string& names, const char* kind, const std::string& help,
                       const Take& take);
void add_switch(CLI::App& verb, const std::string& names, bool& on, const std::string& help);
/// An option with any number of words after it, none too.
void add_words_after(CLI::App& verb, const std::string& name, const char* kind, const std::string& help,
                     const std::function<void(const std::vector<std::string>&)>& take);
/// Any number of plain words.
void add_words(CLI::App& verb, const std::string& name, const Take& take);

}  // namespace fillside::tools
