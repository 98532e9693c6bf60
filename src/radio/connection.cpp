#include "radio/connection.hpp"

#include "base/error.hpp"

namespace loopwright::radio {

void require_usable(const Connection& connection) {
    if (connection.way == Way::network) {
        if (connection.host.empty() || connection.host.find_first_of(" \t\n:/") != std::string::npos) {
            throw base::InputError("radio.host", connection.host, "a host name or an IPv4 address");
        }
        if (connection.port < 1 || connection.port > 65535) {
            throw base::InputError("radio.port", std::to_string(connection.port), "1 to 65535");
        }
        return;
    }
    if (connection.driver < 1) {
        throw base::InputError("radio.driver", std::to_string(connection.driver),
                               "the number of one of Hamlib's drivers");
    }
    if (connection.device.empty()) {
        throw base::InputError("radio.device", connection.device, "a device such as /dev/ttyUSB0");
    }
    if (connection.speed_baud < 0) {
        throw base::InputError("radio.speed", std::to_string(connection.speed_baud),
                               "a speed in baud, or 0 for the driver's own");
    }
}

std::string place_of(const Connection& connection) {
    if (connection.way == Way::network) {
        return connection.host + ":" + std::to_string(connection.port);
    }
    return connection.device;
}

} // namespace loopwright::radio
