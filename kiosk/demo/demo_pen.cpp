#include "kiosk/demo/demo_pen.hpp"

namespace holdfast::kiosk::demo {

ledger::UuidRandom DemoPen::chance() {
    ledger::UuidRandom out{};
    for (auto& byte : out) {
        byte = static_cast<std::uint8_t>(m_engine() & 0xFFU);
    }
    return out;
}

std::string DemoPen::newId() {
    return m_ids.next(static_cast<std::uint64_t>(m_clock.wall().millisecondsSinceEpoch), chance());
}

ledger::Result<void> DemoPen::write(const std::vector<records::Record>& list,
                                    const std::vector<ledger::PersonName>& names) {
    return commit(0, list, {}, names, {});
}

ledger::Result<void> DemoPen::writeSigned(std::int64_t person, const std::vector<records::Record>& list,
                                          const std::vector<std::string>& ids,
                                          std::vector<ledger::BlobDraft> pictures) {
    return commit(person, list, ids, {}, std::move(pictures));
}

ledger::Result<void> DemoPen::commit(std::int64_t person, const std::vector<records::Record>& list,
                                     const std::vector<std::string>& ids, const std::vector<ledger::PersonName>& names,
                                     std::vector<ledger::BlobDraft> pictures) {
    const auto wall = m_clock.wall();
    ledger::CommitRequest request;
    for (std::size_t i = 0; i < list.size(); ++i) {
        const auto& row = records::rowOf(list[i]);
        request.entries.push_back({i < ids.size() ? ids[i] : newId(), kDemoKiosk, wall.millisecondsSinceEpoch,
                                   wall.utcOffsetMinutes, person, std::string{row.kind}, row.version,
                                   records::bodyOf(list[i])});
    }
    request.persons = names;
    request.blobs = pictures;
    if (const auto done = m_book.commit(request); !done) {
        return tl::unexpected(done.error());
    }
    for (auto& picture : pictures) {
        m_pictures.push_back(std::move(picture));
    }
    if (written) {
        written(list);
    }
    return {};
}

} // namespace holdfast::kiosk::demo
