#pragma once

#include "kiosk/screens/presenting/places/beside.hpp"
#include "kiosk/screens/presenting/testing/pictures.hpp"

#include <QFileSystemWatcher>
#include <QTimer>

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <vector>

namespace holdfast::kiosk::screens {

/// Pictures that are not in the book yet, by hash, for whoever draws them. Any thread.
class WaitingPictures final {
public:
    void put(const std::string& sha256, const ledger::Bytes& jpeg);
    void drop(const std::string& sha256);
    [[nodiscard]] std::optional<ledger::Bytes> find(const std::string& sha256) const;

private:
    mutable std::mutex m_mutex;
    std::map<std::string, ledger::Bytes> m_pictures;
};

/// The folder that pictures are laid into. A file is read once its size has stopped changing, beside the main thread,
/// and waits until it is kept with a test; then it moves to "taken" in the same folder. What cannot be used stays where
/// it lies and is named. Main thread only.
class PictureInbox final {
public:
    /// `changed` is called when something came or was refused. The folder is made if it is missing.
    PictureInbox(std::filesystem::path folder, std::shared_ptr<WaitingPictures> shelf, std::function<void()> changed);

    [[nodiscard]] const std::vector<PictureRead>& waiting() const noexcept { return m_waiting; }
    [[nodiscard]] const std::vector<shop::PictureFault>& refused() const noexcept { return m_refused; }
    [[nodiscard]] const std::filesystem::path& folder() const noexcept { return m_folder; }
    [[nodiscard]] const PictureRead* find(const std::string& sha256) const noexcept;
    /// It is in the book: the file moves away.
    void taken(const std::string& sha256);
    /// Looks into the folder at once; also by itself when it changes.
    void look();

private:
    struct Seen final {
        std::uintmax_t size = 0;
        std::filesystem::file_time_type written{};
        bool operator==(const Seen&) const = default;
    };
    void read(const std::filesystem::path& file, const Seen& seen);
    void take(tl::expected<PictureRead, shop::PictureFault> read);
    void forgetGone(const std::set<std::filesystem::path>& there);

    std::filesystem::path m_folder;
    std::shared_ptr<WaitingPictures> m_shelf;
    std::function<void()> m_changed;
    std::map<std::filesystem::path, Seen> m_growing; ///< as they were at the last look
    std::map<std::filesystem::path, Seen> m_done;    ///< read or refused as they are
    std::vector<PictureRead> m_waiting;
    std::vector<shop::PictureFault> m_refused;
    QFileSystemWatcher m_watcher;
    QTimer m_again; ///< while something grows
    Beside m_beside;
};

} // namespace holdfast::kiosk::screens
