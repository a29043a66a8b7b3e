#include "kiosk/screens/presenting/places/certificate_form.hpp"

#include "kiosk/screens/presenting/places/instrument_words.hpp"

#include <cstdlib>

namespace holdfast::kiosk::screens {

std::optional<records::CertificateAdded> CertificateForm::certificate() {
    auto made = shop::instruments::certificateFrom(m_draft, m_today);
    m_faults = made ? std::vector<shop::instruments::FormFault>{} : std::move(made.error());
    return made ? std::optional{std::move(*made)} : std::nullopt;
}

bool CertificateForm::act(const std::string& id) {
    if (id == "instruments.point.add") {
        if (m_draft.points.size() < shop::instruments::kMostPoints) {
            m_draft.points.emplace_back();
        }
    } else if (id == "instruments.point.remove") {
        if (!m_draft.points.empty()) {
            m_draft.points.pop_back();
        }
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

bool CertificateForm::enter(const std::string& field, const std::string& text) {
    if (field == "instruments.date") {
        m_draft.date = text;
    } else if (field == "instruments.due") {
        m_draft.due = text;
    } else if (field == "instruments.k") {
        m_draft.coverageFactor = text;
    } else if (const auto rest = behind(field, "instruments.point.")) {
        const auto position = static_cast<std::size_t>(std::atoi(rest->c_str()));
        const auto what = rest->substr(rest->find('.') == std::string::npos ? rest->size() : rest->find('.') + 1);
        if (position < 1 || position > m_draft.points.size()) {
            return false;
        }
        auto& point = m_draft.points[position - 1];
        auto* value = what == "at"           ? &point.at
                      : what == "correction" ? &point.correction
                      : what == "u"          ? &point.uncertainty
                                             : nullptr;
        if (value == nullptr) {
            return false;
        }
        *value = text;
    } else {
        return false;
    }
    m_faults.clear();
    return true;
}

SheetBlock CertificateForm::pointBlock(std::size_t index, const wording::Speech& speech) const {
    const auto number = std::to_string(index + 1);
    const auto& point = m_draft.points[index];
    const wording::Arguments arguments{{"point", number}, {"unit", unitSignOf(m_draft.unit)}};
    const auto field = [&](const char* what, const char* label, const std::string& value) {
        return instrumentField("point." + number + "." + what, speech.text(label, arguments), value, {},
                               SheetKinds::Number, m_faults, speech);
    };
    return fieldsBlock({field("at", "instruments.field.point-at", point.at),
                        field("correction", "instruments.field.point-correction", point.correction),
                        field("u", "instruments.field.point-u", point.uncertainty)});
}

QList<SheetBlock> CertificateForm::blocks(const wording::Speech& speech) const {
    const auto field = [&](const char* name, const std::string& value, const char* hint, SheetKinds::Keys keys) {
        return instrumentField(name, speech.text(std::string{"instruments.field."} + name), value, speech.text(hint),
                               keys, m_faults, speech);
    };
    QList<SheetBlock> blocks;
    for (const auto& fault : m_faults) {
        if (fault.field == "points") {
            blocks.append(textBlock(SheetKinds::Lead, wording::sentence(fault, speech)));
        }
    }
    blocks.append(textBlock(SheetKinds::Sentence,
                            speech.text("instruments.certificate-copy", {{"unit", unitSignOf(m_draft.unit)}})));
    blocks.append(fieldsBlock({field("date", m_draft.date, "instruments.field.date-hint", SheetKinds::Date),
                               field("due", m_draft.due, "instruments.field.date-hint", SheetKinds::Date),
                               field("k", m_draft.coverageFactor, "instruments.field.k-hint", SheetKinds::Number)}));
    blocks.append(textBlock(SheetKinds::Note, speech.text("instruments.certificate-correction")));
    for (std::size_t i = 0; i < m_draft.points.size(); ++i) {
        blocks.append(pointBlock(i, speech));
    }
    std::vector<ActionState> actions;
    if (m_draft.points.size() < shop::instruments::kMostPoints) {
        actions.push_back(pressOf("instruments.point.add", speech.text("instruments.add-point")));
    }
    if (!m_draft.points.empty()) {
        actions.push_back(pressOf("instruments.point.remove", speech.text("instruments.remove-point")));
    }
    blocks.append(pressBlock(actions));
    return blocks;
}

} // namespace holdfast::kiosk::screens
