#include "support/cases.hpp"

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace loopwright::support {

namespace {

using Json = nlohmann::json;

const Json* find(const Json& root, const std::string& path) {
    const Json* at = &root;
    std::size_t start = 0;
    while (start <= path.size()) {
        const std::size_t dot = std::min(path.find('.', start), path.size());
        const auto member = at->find(path.substr(start, dot - start));
        if (member == at->end()) {
            return nullptr;
        }
        at = &*member;
        start = dot + 1;
    }
    return at;
}

Json must(const std::string& text, const std::string& path) {
    const Json root = Json::parse(text);
    const Json* found = find(root, path);
    if (found == nullptr) {
        throw std::runtime_error("case " + root.at("id").get<std::string>() + " has no " + path);
    }
    return *found;
}

double number_or(const std::string& text, const std::string& path, double otherwise) {
    const Json root = Json::parse(text);
    const Json* found = find(root, path);
    return found == nullptr ? otherwise : found->get<double>();
}

} // namespace

bool Case::has_input(const std::string& path) const {
    return find(Json::parse(json), "inputs." + path) != nullptr;
}
double Case::input(const std::string& path) const {
    return must(json, "inputs." + path).get<double>();
}
std::string Case::input_text(const std::string& path) const {
    return must(json, "inputs." + path).get<std::string>();
}
std::array<double, 3> Case::input_point(const std::string& path) const {
    return must(json, "inputs." + path).get<std::array<double, 3>>();
}
bool Case::has_output(const std::string& name) const {
    return find(Json::parse(json), "outputs." + name) != nullptr;
}
double Case::output(const std::string& name) const {
    return must(json, "outputs." + name + ".value").get<double>();
}
double Case::u_num(const std::string& name) const {
    return must(json, "outputs." + name + ".u_num").get<double>();
}
double Case::u_model(const std::string& name) const {
    return number_or(json, "outputs." + name + ".u_model", 0.0);
}
double Case::tolerance(const std::string& name) const {
    return std::max(1e-6, 3.0 * u_num(name));
}

std::vector<Case> independent_cases(const std::string& category) {
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/tests/reference/data/independent_cases.json");
    const Json all = Json::parse(file);
    std::vector<Case> chosen;
    for (const Json& one : all.at("cases")) {
        if (one.at("category") == category) {
            chosen.push_back({one.at("id").get<std::string>(), category, one.dump()});
        }
    }
    if (chosen.empty()) {
        throw std::runtime_error("no independent cases of category " + category);
    }
    return chosen;
}

} // namespace loopwright::support
