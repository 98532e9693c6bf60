#pragma once
// One line to a radio through Hamlib. Blocks; used from the follower's thread only.
#include "radio/connection.hpp"

#include <memory>
#include <string>

namespace loopwright::radio::detail {

class Line {
public:
    Line(const Connection& connection, std::chrono::milliseconds answer);
    ~Line();
    Line(const Line&) = delete;
    Line& operator=(const Line&) = delete;
    Line(Line&&) = delete;
    Line& operator=(Line&&) = delete;

    /// Empty when the line stands, else one sentence.
    [[nodiscard]] std::string open();
    /// Empty when `frequency_Hz` was read, else one sentence.
    [[nodiscard]] std::string read(double& frequency_Hz);

private:
    struct Handle;
    void configure(const char* name, const std::string& value);
    void configure_serial();
    [[nodiscard]] std::string words(int code) const;
    std::unique_ptr<Handle> handle_;
    Connection connection_;
    std::chrono::milliseconds answer_;
};

} // namespace loopwright::radio::detail
