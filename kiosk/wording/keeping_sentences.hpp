#pragma once

#include "kiosk/ledger/report.hpp"
#include "kiosk/records/record_fault.hpp"
#include "kiosk/shop/keeping/dryer_draft.hpp"
#include "kiosk/shop/keeping/person_draft.hpp"
#include "kiosk/shop/keeping/settings.hpp"
#include "kiosk/shop/keeping/sign_in.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::wording {

[[nodiscard]] std::string word(records::Role role, const Speech& speech);
/// "QA or owner".
[[nodiscard]] std::string words(const std::vector<records::Role>& roles, const Speech& speech);
/// "decide about holds".
[[nodiscard]] std::string word(shop::Right right, const Speech& speech);

/// Full sentences for what is wrong.
[[nodiscard]] std::string sentence(shop::PinFault fault, const Speech& speech);
[[nodiscard]] std::string sentence(const shop::PersonFault& fault, const Speech& speech);
[[nodiscard]] std::string sentence(const shop::DryerFault& fault, const Speech& speech);
[[nodiscard]] std::string sentence(const shop::SettingFault& fault, const Speech& speech);
[[nodiscard]] std::string sentence(const records::RecordFault& fault, const Speech& speech);
/// `name` is whom it is about, if anybody.
[[nodiscard]] std::string sentence(const shop::SignInRefusal& refusal, shop::Right right, const std::string& name,
                                   const Speech& speech);

/// The answer first, then one sentence for each thing that was looked at or is wrong.
[[nodiscard]] std::vector<std::string> sentences(const ledger::IntegrityReport& report, const Speech& speech);

} // namespace holdfast::kiosk::wording
