#include "band/status.hpp"

namespace loopwright::band {

const char* name_of(Status status) noexcept {
    switch (status) {
    case Status::confirmed:
        return "confirmed";
    case Status::computed:
        return "computed";
    case Status::memory:
        return "from memory";
    case Status::common_practice:
        break;
    }
    return "common practice, no source";
}

} // namespace loopwright::band
