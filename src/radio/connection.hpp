#pragma once
// Where the radio is found: Hamlib's network daemon on a host and port, or a radio on a serial device by the
// number of Hamlib's driver.
#include <chrono>
#include <string>
#include <vector>

namespace loopwright::radio {

enum class Way { network, serial };

struct Connection {
    Way way = Way::network;
    std::string host = "127.0.0.1"; ///< network
    int port = 4532;    ///< network; 4532 is what Hamlib's manual page of rigctld gives as its own
    int driver = 0;     ///< serial; number of Hamlib's driver
    std::string device; ///< serial; "/dev/ttyUSB0"
    int speed_baud = 0; ///< serial; 0: the driver's own
    bool operator==(const Connection&) const = default;
};

/// How often and how long. Every figure is of this program's own choice.
struct Pace {
    std::chrono::milliseconds poll{500};        ///< between two questions
    std::chrono::milliseconds answer{1500};     ///< the longest wait for one answer
    std::chrono::milliseconds first_retry{500}; ///< after a failure; doubled for each that follows
    std::chrono::milliseconds longest_retry{8000};
};

/// Throws base::InputError where the connection cannot be tried: host empty or with blanks or a colon, port
/// outside 1 to 65535, driver below 1, device empty, speed below 0.
void require_usable(const Connection& connection);

/// "127.0.0.1:4532", "/dev/ttyUSB0".
[[nodiscard]] std::string place_of(const Connection& connection);

/// A radio that Hamlib has a driver for.
struct Driver {
    int number = 0;
    std::string maker, model;
};

/// Those on serial lines, by maker and model; as the installed Hamlib names them. Takes some 10 ms at the
/// first call. Not from two threads at a time.
[[nodiscard]] std::vector<Driver> known_drivers();

} // namespace loopwright::radio
