#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <vector>

/// The language tables as they stand in the tree, and what of a sentence both languages must share.
namespace holdfast::wording_test {

using Table = std::map<std::string, std::string>;
using Words = std::vector<std::string>;

/// The floor's table, named "", and those of the rooms, named by their paths under the language's own.
std::set<std::string> tablesOf(const std::string& code);

/// Fails the test if it is no object of texts or a key stands twice.
Table tableOf(const std::string& code, const std::string& name);

/// One sentence in both languages.
struct Pair final {
    std::string key, english, spanish;
};

/// Every sentence that stands in both languages.
std::vector<Pair> pairs();

/// ASCII letters made small.
std::string small(std::string text);

/// What stands between each `open` and the next `close`.
Words between(const std::string& text, const std::string& open, const std::string& close);

/// Names in braces; `{Name}` and `{name}` are the same argument.
std::set<std::string> argumentsOf(const std::string& text);

/// A letter outside of the braces.
bool hasLetters(const std::string& text);

/// Small words of letters (ASCII, and the Latin ones of two bytes) outside of the braces.
Words wordsOf(const std::string& text);

/// Runs of digits outside of the braces.
std::multiset<std::string> figuresOf(const std::string& text);

std::ptrdiff_t timesIn(const std::string& text, const std::string& sign);

/// The sign that ends a sentence: ".", ":" or "?"; else nothing.
std::string endOf(const std::string& text);

bool startsWith(const std::string& text, const std::string& start);

/// In one of its sentences, a word beginning with one of `proofs` comes after one of `denials`.
bool denies(const std::string& text, const std::set<std::string>& denials, const Words& proofs);

} // namespace holdfast::wording_test
