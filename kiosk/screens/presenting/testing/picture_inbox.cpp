#include "kiosk/screens/presenting/testing/picture_inbox.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kLookAgainMs = 500;
constexpr const char* kTaken = "taken";

} // namespace

void WaitingPictures::put(const std::string& sha256, const ledger::Bytes& jpeg) {
    const std::lock_guard lock{m_mutex};
    m_pictures[sha256] = jpeg;
}

void WaitingPictures::drop(const std::string& sha256) {
    const std::lock_guard lock{m_mutex};
    m_pictures.erase(sha256);
}

std::optional<ledger::Bytes> WaitingPictures::find(const std::string& sha256) const {
    const std::lock_guard lock{m_mutex};
    const auto found = m_pictures.find(sha256);
    return found == m_pictures.end() ? std::nullopt : std::optional{found->second};
}

PictureInbox::PictureInbox(std::filesystem::path folder, std::shared_ptr<WaitingPictures> shelf,
                           std::function<void()> changed)
    : m_folder{std::move(folder)}, m_shelf{std::move(shelf)}, m_changed{std::move(changed)} {
    std::error_code ignored;
    std::filesystem::create_directories(m_folder, ignored);
    m_watcher.addPath(QString::fromStdString(m_folder.string()));
    QObject::connect(&m_watcher, &QFileSystemWatcher::directoryChanged, &m_again, [this] { look(); });
    m_again.setSingleShot(true);
    m_again.setInterval(kLookAgainMs);
    QObject::connect(&m_again, &QTimer::timeout, &m_again, [this] { look(); });
    look();
}

const PictureRead* PictureInbox::find(const std::string& sha256) const noexcept {
    const auto found =
        std::find_if(m_waiting.begin(), m_waiting.end(), [&](const auto& one) { return one.sha256 == sha256; });
    return found == m_waiting.end() ? nullptr : &*found;
}

void PictureInbox::look() {
    std::set<std::filesystem::path> there;
    std::error_code fault;
    for (const auto& item : std::filesystem::directory_iterator{m_folder, fault}) {
        std::error_code gone;
        const auto name = item.path().filename().string();
        if (!item.is_regular_file(gone) || gone || name.empty() || name.front() == '.') {
            continue;
        }
        const Seen seen{item.file_size(gone), item.last_write_time(gone)};
        if (gone) {
            continue;
        }
        there.insert(item.path());
        if (const auto done = m_done.find(item.path()); done != m_done.end() && done->second == seen) {
            continue;
        }
        auto& before = m_growing[item.path()];
        if (before == seen && seen.size > 0) {
            m_growing.erase(item.path());
            read(item.path(), seen);
        } else {
            before = seen;
        }
    }
    forgetGone(there);
    if (!m_growing.empty()) {
        m_again.start();
    }
}

void PictureInbox::forgetGone(const std::set<std::filesystem::path>& there) {
    const auto isGone = [&](const auto& one) { return there.count(one.first) == 0; };
    std::erase_if(m_growing, isGone);
    std::erase_if(m_done, isGone);
    bool changed = std::erase_if(m_refused, [&](const auto& one) { return there.count(m_folder / one.file) == 0; }) > 0;
    for (auto one = m_waiting.begin(); one != m_waiting.end();) {
        if (there.count(one->file) == 0) {
            m_shelf->drop(one->sha256);
            one = m_waiting.erase(one);
            changed = true;
        } else {
            ++one;
        }
    }
    if (changed) {
        m_changed();
    }
}

void PictureInbox::read(const std::filesystem::path& file, const Seen& seen) {
    m_done[file] = seen;
    m_beside.run([this, file] {
        auto answer = readPicture(file);
        return [this, answer = std::move(answer)] { take(answer); };
    });
}

void PictureInbox::take(tl::expected<PictureRead, shop::PictureFault> read) {
    if (!read) {
        std::erase_if(m_refused, [&](const auto& one) { return one.file == read.error().file; });
        m_refused.push_back(read.error());
    } else {
        std::erase_if(m_waiting, [&](const auto& one) { return one.file == read->file; });
        m_shelf->put(read->sha256, read->jpeg);
        m_waiting.push_back(std::move(*read));
    }
    m_changed();
}

void PictureInbox::taken(const std::string& sha256) {
    const auto* found = find(sha256);
    if (found == nullptr) {
        return;
    }
    const auto file = found->file;
    std::error_code fault;
    std::filesystem::create_directories(m_folder / kTaken, fault);
    auto to = m_folder / kTaken / file.filename();
    for (int i = 2; std::filesystem::exists(to, fault); ++i) { // cameras begin to count anew
        to = m_folder / kTaken / (file.stem().string() + "-" + std::to_string(i) + file.extension().string());
    }
    std::filesystem::rename(file, to, fault); // if it cannot be moved it lies there, done with
    std::erase_if(m_waiting, [&](const auto& one) { return one.file == file; });
    m_shelf->drop(sha256);
}

} // namespace holdfast::kiosk::screens
