#include "kiosk/ledger/kept_statements.hpp"

namespace holdfast::kiosk::ledger {

void KeptStatement::putBack() noexcept {
    try {
        tryReset(); // whatever the last use ended with
        clearBindings();
        if (m_place.empty()) {
            const std::string sql = getQuery();
            m_home->m_idle.insert_or_assign(sql, std::move(static_cast<Statement&>(*this)));
        } else {
            m_place.mapped() = std::move(static_cast<Statement&>(*this));
            m_home->m_idle.insert(std::move(m_place)); // if the same text came back before it, that one stays
        }
    } catch (const std::exception&) { // NOLINT(bugprone-empty-catch): then it is prepared anew the next time
    }
}

} // namespace holdfast::kiosk::ledger
