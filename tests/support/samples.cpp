#include "support/samples.hpp"

#include <algorithm>
#include <filesystem>

namespace loopwright::support {

std::vector<std::string> samples() {
    std::vector<std::string> all;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(LOOPWRIGHT_SOURCE_DIR) / "designs")) {
        if (entry.path().extension() == ".loop") {
            all.push_back(entry.path().string());
        }
    }
    std::sort(all.begin(), all.end());
    return all;
}

} // namespace loopwright::support
