#include "radio/detail/line.hpp"

#include <cmath>
#include <hamlib/rig.h>

namespace loopwright::radio::detail {

namespace {

/// Above what any driver reports; a radio that answers more has not been understood.
constexpr double highest_Hz = 1e12;

} // namespace

struct Line::Handle {
    RIG* rig = nullptr;
    bool opened = false;
};

Line::Line(const Connection& connection, std::chrono::milliseconds answer)
    : handle_(std::make_unique<Handle>()), connection_(connection), answer_(answer) {
    rig_set_debug(RIG_DEBUG_NONE); // Hamlib's log, or else it writes to the terminal
    const bool network = connection.way == Way::network;
    handle_->rig = rig_init(network ? static_cast<rig_model_t>(RIG_MODEL_NETRIGCTL)
                                    : static_cast<rig_model_t>(connection.driver));
    if (handle_->rig == nullptr) {
        return;
    }
    configure("rig_pathname", place_of(connection));
    // Hamlib then refuses to key by itself, whatever the driver could do.
    configure("ptt_type", "None");
    configure("cache_timeout", "0");
    configure("retry", "0");
    configure("timeout", std::to_string(answer_.count()));
    if (!network) {
        configure_serial();
    }
}

Line::~Line() {
    if (handle_->rig != nullptr) {
        if (handle_->opened) {
            rig_close(handle_->rig);
        }
        rig_cleanup(handle_->rig);
    }
}

void Line::configure(const char* name, const std::string& value) {
    // What one driver does not know is no failure: another has the same under its own name.
    rig_set_conf(handle_->rig, rig_token_lookup(handle_->rig, name), value.c_str());
}

void Line::configure_serial() {
    if (connection_.speed_baud > 0) {
        configure("serial_speed", std::to_string(connection_.speed_baud));
    }
    // Some interfaces key the transmitter by these lines: both are held off. Hardware handshake owns RTS.
    configure("dtr_state", "OFF");
    if (handle_->rig->state.rigport.parm.serial.handshake != RIG_HANDSHAKE_HARDWARE) {
        configure("rts_state", "OFF");
    }
}

std::string Line::open() {
    if (handle_->rig == nullptr) {
        return "The installed Hamlib has no driver with the number " + std::to_string(connection_.driver) +
               ".";
    }
    const int code = rig_open(handle_->rig);
    if (code != RIG_OK) {
        if (connection_.way == Way::network && code == -RIG_EIO) {
            return "Nothing listens at " + place_of(connection_) +
                   ": start Hamlib's rigctld there, or correct host and port.";
        }
        if (connection_.way == Way::serial && code == -RIG_EIO) {
            return "The device " + connection_.device +
                   " cannot be opened: is it plugged in, and may this user open it?";
        }
        return words(code);
    }
    handle_->opened = true;
    // The daemon may have told its own, longer waiting time while the line was opened.
    configure("retry", "0");
    configure("timeout", std::to_string(answer_.count()));
    return {};
}

std::string Line::read(double& frequency_Hz) {
    freq_t found = 0;
    const int code = rig_get_freq(handle_->rig, RIG_VFO_CURR, &found);
    if (code != RIG_OK) {
        return words(code);
    }
    if (!std::isfinite(found) || found <= 0 || found > highest_Hz) {
        return "The radio answers with no frequency.";
    }
    frequency_Hz = found;
    return {};
}

std::string Line::words(int code) const {
    const std::string place = place_of(connection_);
    switch (-code) {
    case RIG_ETIMEOUT:
        return "The radio at " + place + " did not answer within " + std::to_string(answer_.count()) + " ms.";
    case RIG_EIO:
        return "The line to " + place + " was lost.";
    case RIG_EPROTO:
    case RIG_ERJCTED:
    case RIG_BUSERROR:
        return "What answers at " + place + " is not understood: is it the right port, radio and speed?";
    case RIG_ENIMPL:
    case RIG_ENAVAIL:
        return "Hamlib cannot read the frequency of this radio.";
    case RIG_EINVAL:
    case RIG_ECONF:
        return "Hamlib does not take these settings for " + place + ".";
    default:
        return "Hamlib reports error " + std::to_string(-code) + " for " + place + ".";
    }
}

} // namespace loopwright::radio::detail
