#pragma once

#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"

#include <QUrl>

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

/// Short ways to write a sheet's blocks.
namespace holdfast::kiosk::screens {

[[nodiscard]] inline SheetBlock textBlock(SheetKinds::Block kind, const std::string& text) {
    SheetBlock block;
    block.kind = kind;
    block.text = toQString(text);
    return block;
}

/// A picture of the book by its SHA-256, and the id whose press shows it as large as the page.
inline constexpr std::string_view kPicture = "picture.";
[[nodiscard]] inline QUrl pictureUrl(const std::string& sha256) {
    return QUrl{QStringLiteral("image://picture/") + toQString(sha256)};
}
[[nodiscard]] inline QString pictureId(const std::string& sha256) {
    return toQString(std::string{kPicture} + sha256);
}

[[nodiscard]] inline ActionState pressOf(const std::string& id, const std::string& label, bool primary = false) {
    ActionState action;
    action.id = toQString(id);
    action.label = toQString(label);
    action.primary = primary;
    return action;
}

[[nodiscard]] inline SheetBlock pressBlock(const std::vector<ActionState>& actions) {
    SheetBlock block;
    block.kind = SheetKinds::Actions;
    block.actions = QList<ActionState>(actions.begin(), actions.end());
    return block;
}

[[nodiscard]] inline SheetRow factRow(const std::string& title, const std::string& value,
                                      const std::string& detail = {}) {
    SheetRow row;
    row.title = toQString(title);
    row.value = toQString(value);
    row.detail = toQString(detail);
    return row;
}

[[nodiscard]] inline SheetBlock rowsBlock(SheetKinds::Block kind, const std::vector<SheetRow>& rows) {
    SheetBlock block;
    block.kind = kind;
    block.rows = QList<SheetRow>(rows.begin(), rows.end());
    return block;
}

[[nodiscard]] inline SheetField fieldOf(const std::string& id, const std::string& label, const std::string& value,
                                        const std::string& hint = {}, SheetKinds::Keys keys = SheetKinds::Text) {
    SheetField field;
    field.id = toQString(id);
    field.label = toQString(label);
    field.value = toQString(value);
    field.hint = toQString(hint);
    field.keys = keys;
    return field;
}

[[nodiscard]] inline SheetBlock fieldsBlock(const std::vector<SheetField>& fields) {
    SheetBlock block;
    block.kind = SheetKinds::Fields;
    block.fields = QList<SheetField>(fields.begin(), fields.end());
    return block;
}

struct Choice final {
    std::string id;
    std::string label;
};

[[nodiscard]] inline SheetBlock choicesBlock(const std::string& label, const std::vector<Choice>& choices,
                                             const std::string& chosen) {
    auto block = textBlock(SheetKinds::Choices, label);
    for (const auto& choice : choices) {
        block.actions.append(pressOf(choice.id, choice.label));
    }
    block.chosenId = toQString(chosen);
    return block;
}

} // namespace holdfast::kiosk::screens
