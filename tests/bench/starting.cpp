#include "tests/bench/folder.hpp"
#include "tests/bench/rows.hpp"

#include <array>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <memory>
#include <optional>
#include <poll.h>
#include <spawn.h>
#include <string_view>
#include <sys/wait.h>
#include <unistd.h>

namespace holdfast::bench {
namespace {

using Seconds = std::chrono::duration<double>;
using Arguments = std::vector<std::string>;

/// Qt's own software renderer says this when the frame is on the window, once its logging category is on: the same
/// mark for any Qt Quick program, and nothing in the program is there for it.
constexpr std::string_view kFrameMark = "Frame rendered";
constexpr std::array<const char*, 5> kSurroundings{"QT_QPA_PLATFORM=offscreen", "QT_QUICK_BACKEND=software",
                                                   "QT_LOGGING_RULES=qt.scenegraph.time.renderloop=true",
                                                   "QT_FORCE_STDERR_LOGGING=1", "LC_ALL=C.UTF-8"};

std::vector<char*> pointersTo(Arguments& texts) {
    std::vector<char*> pointers;
    for (auto& text : texts) {
        pointers.push_back(text.data());
    }
    pointers.push_back(nullptr);
    return pointers;
}

/// A program whose standard error is read here; ended and waited for with its owner.
class Program final {
public:
    explicit Program(Arguments words) {
        std::array<int, 2> ends{-1, -1};
        if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
            return;
        }
        m_read = ends[0];
        Arguments surroundings{kSurroundings.begin(), kSurroundings.end()};
        for (const char* const name : {"HOME", "PATH", "XDG_RUNTIME_DIR", "LD_LIBRARY_PATH"}) {
            if (const char* value = std::getenv(name)) {
                surroundings.push_back(std::string{name} + '=' + value);
            }
        }
        posix_spawn_file_actions_t actions;
        ::posix_spawn_file_actions_init(&actions);
        ::posix_spawn_file_actions_adddup2(&actions, ends[1], STDERR_FILENO);
        if (::posix_spawn(&m_pid, words.front().c_str(), &actions, nullptr, pointersTo(words).data(),
                          pointersTo(surroundings).data()) != 0) {
            m_pid = -1;
        }
        ::posix_spawn_file_actions_destroy(&actions);
        ::close(ends[1]);
    }
    ~Program() {
        if (m_pid > 0) {
            ::kill(m_pid, SIGTERM);
            ::waitpid(m_pid, nullptr, 0);
        }
        ::close(m_read);
    }
    Program(const Program&) = delete;
    Program& operator=(const Program&) = delete;

    /// False when the program ends, or says nothing for a minute.
    [[nodiscard]] bool showsFrame() {
        std::array<char, 4096> piece{};
        while (m_said.find(kFrameMark) == std::string::npos) {
            pollfd waiting{m_read, POLLIN, 0};
            const auto count = ::poll(&waiting, 1, 60'000) == 1 ? ::read(m_read, piece.data(), piece.size()) : 0;
            if (count <= 0) {
                return false;
            }
            m_said.append(piece.data(), static_cast<std::size_t>(count));
        }
        return true;
    }

private:
    pid_t m_pid = -1;
    int m_read = -1;
    std::string m_said;
};

std::optional<Seconds> timeToFrame(const Arguments& words) {
    const auto start = std::chrono::steady_clock::now();
    Program program{words};
    return program.showsFrame() ? std::optional<Seconds>{std::chrono::steady_clock::now() - start} : std::nullopt;
}

Measure starting(const std::function<Arguments()>& words) {
    return [words](benchmark::State& state) {
        const auto line = words();
        for (auto _ : state) {
            const auto time = timeToFrame(line);
            if (!time) {
                state.SkipWithError("no frame was shown");
                break;
            }
            state.SetIterationTime(time->count());
        }
    };
}

} // namespace

void addStarting(Rows& rows) {
    const auto folder = std::make_shared<Folder>();
    const auto written = std::make_shared<bool>(false);
    const auto kiosk = [folder, written] {
        const Arguments words{HOLDFAST_PROGRAM, "--demo", "--data", folder->path().string()};
        if (!*written) { // the first start writes the demo's book
            *written = timeToFrame(words).has_value();
        }
        return words;
    };
    const std::string baseline = "first frame of an empty window";
    rows.addBaseline(baseline, starting([] { return Arguments{HOLDFAST_EMPTY_WINDOW}; }))
        ->UseManualTime()
        ->Iterations(1);
    rows.add({"first frame of the kiosk on a book", baseline, 2.0}, starting(kiosk))->UseManualTime()->Iterations(1);
}

} // namespace holdfast::bench
