#include "kiosk/screens/presenting/places/shop_dryers.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/wording/keeping_sentences.hpp"

#include <array>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPick = "shop.dryers.pick.";
constexpr std::string_view kDryerField = "shop.dryers.";

struct FieldRow final {
    const char* name;
    std::string shop::DryerDraft::*typed;
    bool isNumber;
};
constexpr std::array<FieldRow, 8> kFields{{
    {"name", &shop::DryerDraft::name, false},
    {"length", &shop::DryerDraft::heatedLength, true},
    {"belt", &shop::DryerDraft::belt, true},
    {"slowest", &shop::DryerDraft::slowest, true},
    {"fastest", &shop::DryerDraft::fastest, true},
    {"set-point", &shop::DryerDraft::setPoint, true},
    {"highest", &shop::DryerDraft::highestSetPoint, true},
    {"pieces", &shop::DryerDraft::piecesPerMetre, true},
}};

} // namespace

void ShopDryers::reload() {
    auto dryers = records::dryers(needs().book->reader());
    if (!dryers) {
        tell(dryers.error());
        return;
    }
    m_dryers = std::move(*dryers);
    m_dryers.erase(std::remove_if(m_dryers.begin(), m_dryers.end(), [](const auto& one) { return one.withdrawn; }),
                   m_dryers.end());
}

void ShopDryers::addTo(SheetPageState& page) const {
    if (m_form && m_withdrawing) {
        addWithdrawing(page);
    } else if (m_form) {
        addForm(page);
    } else {
        addList(page);
    }
}

void ShopDryers::addList(SheetPageState& page) const {
    std::vector<SheetRow> rows;
    for (const auto& dryer : m_dryers) {
        const auto dwell = shop::dwellOf(dryer);
        auto row = factRow(dryer.name, dwell ? text("shop.dryers.row-dwell", {{"dwell", wording::durationText(*dwell)}})
                                             : text("shop.dryers.row-no-dwell"));
        row.id = toQString(std::string{kPick} + dryer.dryer);
        rows.push_back(row);
    }
    page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("shop.dryers.none"))
                                    : rowsBlock(SheetKinds::Rows, rows));
    page.actions.append(pressOf("shop.dryers.new", text("shop.dryers.new")));
}

void ShopDryers::addForm(SheetPageState& page) const {
    page.title = toQString(m_form->before ? m_form->before->name : text("shop.dryers.form-new"));
    const auto unit = wording::Figures{m_form->unit, 0}.unitSign();
    std::vector<SheetField> fields;
    for (const auto& row : kFields) {
        const std::string name{row.name};
        auto field = fieldOf(std::string{kDryerField} + name, text("shop.dryers.field." + name, {{"unit", unit}}),
                             (*m_form).*row.typed, name == "length" ? text("shop.dryers.hint.length") : std::string{},
                             row.isNumber ? SheetKinds::Number : SheetKinds::Text);
        const auto fault =
            std::find_if(m_faults.begin(), m_faults.end(), [&](const auto& one) { return one.field == name; });
        if (fault != m_faults.end()) {
            field.fault = toQString(wording::sentence(*fault, speech()));
        }
        fields.push_back(field);
    }
    page.blocks.append(fieldsBlock(fields));
    if (const auto dryer = shop::dryerFrom(*m_form, {})) {
        if (const auto dwell = shop::dwellOf(*dryer)) {
            page.blocks.append(
                textBlock(SheetKinds::Lead, text("shop.dryers.dwell", {{"dwell", wording::durationText(*dwell)}})));
        } else {
            page.blocks.append(
                textBlock(SheetKinds::Sentence,
                          text(dryer->heatedLengthMetres ? "shop.dryers.no-belt" : "shop.dryers.no-length")));
        }
    }
    page.blocks.append(textBlock(SheetKinds::Note, text("shop.dryers.caution")));
    page.actions = {pressOf("shop.dryers.save", text("shop.save"), true)};
    if (m_form->before) {
        page.actions.append(pressOf("shop.dryers.withdraw", text("shop.dryers.withdraw")));
    }
    page.actions.append(pressOf("shop.dryers.leave", text("shop.leave")));
}

bool ShopDryers::isRunning() const {
    const auto dryers = records::dryersNow(needs().book->reader());
    return dryers && std::any_of(dryers->begin(), dryers->end(), [&](const auto& one) {
               return one.described.dryer == m_form->before->dryer && !one.runningRun.empty();
           });
}

void ShopDryers::addWithdrawing(SheetPageState& page) const {
    const auto& dryer = *m_form->before;
    page.title = toQString(dryer.name);
    if (isRunning()) {
        page.blocks.append(textBlock(SheetKinds::Lead, text("shop.dryers.withdraw-running", {{"dryer", dryer.name}})));
    } else {
        page.blocks.append(textBlock(SheetKinds::Lead, text("shop.dryers.withdraw-ask", {{"dryer", dryer.name}})));
        const auto& here = needs().floor().floor.dryer;
        if (here && here->described.dryer == dryer.dryer) {
            page.blocks.append(textBlock(SheetKinds::Sentence, text("shop.dryers.withdraw-here")));
        }
        page.blocks.append(textBlock(SheetKinds::Note, text("shop.dryers.withdraw-note")));
        page.actions = {pressOf("shop.dryers.withdraw-now", text("shop.dryers.withdraw-now"), true)};
    }
    page.actions.append(pressOf("shop.dryers.leave", text("shop.leave")));
}

bool ShopDryers::act(const std::string& id) {
    if (id == "shop.dryers.new") {
        m_form = shop::DryerDraft{};
        m_form->unit = speech().figures.unit;
    } else if (id == "shop.dryers.leave") {
        m_withdrawing ? static_cast<void>(m_withdrawing = false) : m_form.reset();
    } else if (id == "shop.dryers.withdraw" && m_form && m_form->before) {
        m_withdrawing = true;
    } else if (id == "shop.dryers.withdraw-now" && m_form && m_withdrawing) {
        withdraw();
        return true;
    } else if (id == "shop.dryers.save" && m_form) {
        save();
        return true;
    } else if (const auto dryer = restOf(id, kPick)) {
        const auto found =
            std::find_if(m_dryers.begin(), m_dryers.end(), [&](const auto& one) { return one.dryer == *dryer; });
        if (found != m_dryers.end()) {
            m_form = shop::draftOf(*found, speech().figures.unit);
            m_withdrawing = false;
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool ShopDryers::enter(const std::string& field, const std::string& typed) {
    const auto name = restOf(field, kDryerField);
    const auto* row =
        name ? std::find_if(kFields.begin(), kFields.end(), [&](const auto& one) { return one.name == *name; })
             : kFields.end();
    if (!m_form || row == kFields.end()) {
        return false;
    }
    (*m_form).*row->typed = typed;
    m_faults.clear();
    return true;
}

void ShopDryers::save() {
    auto dryer = shop::dryerFrom(*m_form, m_dryers);
    m_faults = dryer ? std::vector<shop::DryerFault>{} : std::move(dryer.error());
    if (!m_faults.empty()) {
        return;
    }
    if (dryer->dryer.empty()) {
        dryer->dryer = needs().newId();
    }
    keepSigned(std::move(*dryer));
}

/// Its runs, readings and lots stay; it is only no longer offered.
void ShopDryers::withdraw() {
    if (isRunning()) {
        return;
    }
    auto dryer = *m_form->before;
    dryer.withdrawn = true;
    keepSigned(std::move(dryer));
}

void ShopDryers::keepSigned(records::DryerDescribed dryer) {
    needs().sign(shop::Right::describeDryers, [this, record = std::move(dryer)](std::int64_t person) {
        keep({{record}, person}, [this] {
            m_form.reset();
            m_withdrawing = false;
            reload();
        });
    });
}

} // namespace holdfast::kiosk::screens
