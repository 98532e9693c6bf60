#include "base/error.hpp"
#include "tuning/detail/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::tuning::detail {
namespace {

double spread(const Member& member, bool with_noise) {
    const double deviation = with_noise ? std::hypot(member.deviation, member.noise) : member.deviation;
    return std::max(deviation, std::numeric_limits<double>::min());
}

} // namespace

double below(const Mixture& mixture, double x, bool with_noise) {
    double sum = 0;
    double weights = 0;
    for (const Member& member : mixture) {
        sum += member.weight * 0.5 * std::erfc(-(x - member.mean) / (spread(member, with_noise) * M_SQRT2));
        weights += member.weight;
    }
    return sum / weights;
}

double mean_of(const Mixture& mixture) {
    double sum = 0;
    double weights = 0;
    for (const Member& member : mixture) {
        sum += member.weight * member.mean;
        weights += member.weight;
    }
    return sum / weights;
}

// Between the outermost members' own bounds by the secant rule, halving where that leaves the bracket.
double quantile(const Mixture& mixture, double p, bool with_noise) {
    if (mixture.empty() || !(p > 0 && p < 1)) {
        throw base::ProgramError("quantile of nothing");
    }
    constexpr double far = 9; // standard deviations: 1e-19
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
    for (const Member& member : mixture) {
        low = std::min(low, member.mean - far * spread(member, with_noise));
        high = std::max(high, member.mean + far * spread(member, with_noise));
    }
    double low_excess = -p;
    double high_excess = 1 - p;
    const double fine = 1e-6 * (high - low);
    for (int step = 0; step < 100 && high - low > fine; ++step) {
        // Every third step halves: a steep mixture would let one end creep.
        double x =
            step % 3 == 2 ? (low + high) / 2 : low - low_excess * (high - low) / (high_excess - low_excess);
        x = std::clamp(x, low + 0.01 * (high - low), high - 0.01 * (high - low));
        const double excess = below(mixture, x, with_noise) - p;
        if (excess < 0) {
            low = x;
            low_excess = excess;
        } else {
            high = x;
            high_excess = excess;
        }
    }
    return (low + high) / 2;
}

double log_density(const Mixture& mixture, double x) {
    double most = std::numeric_limits<double>::lowest();
    std::vector<double> logs;
    double weights = 0;
    for (const Member& member : mixture) {
        const double deviation = spread(member, true);
        const double z = (x - member.mean) / deviation;
        logs.push_back(std::log(member.weight) - 0.5 * z * z - std::log(deviation) - 0.9189385332046727);
        most = std::max(most, logs.back());
        weights += member.weight;
    }
    double sum = 0;
    for (const double each : logs) {
        sum += std::exp(each - most);
    }
    return most + std::log(sum / weights);
}

void append(Mixture& to, const Mixture& from, double weight) {
    for (Member member : from) {
        member.weight *= weight;
        to.push_back(member);
    }
}

Mixture pruned(Mixture mixture) {
    constexpr double least = 1e-4;
    double total = 0;
    for (const Member& member : mixture) {
        total += member.weight;
    }
    mixture.erase(std::remove_if(mixture.begin(), mixture.end(),
                                 [&](const Member& member) { return member.weight < least * total; }),
                  mixture.end());
    double kept = 0;
    for (const Member& member : mixture) {
        kept += member.weight;
    }
    for (Member& member : mixture) {
        member.weight /= kept;
    }
    return mixture;
}

} // namespace loopwright::tuning::detail
