#include "tuning/detail/posterior.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::tuning::detail {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

constexpr double log_two_pi = 1.8378770664093453;
constexpr double least_weight = 1e-5; ///< of a member that is kept

VectorXd scales_of(const SizeNode& node, Index smooth_from, Index parameters) {
    VectorXd scales = VectorXd::Constant(parameters, node.hardware);
    scales.tail(parameters - smooth_from).setConstant(node.smooth);
    return scales;
}

double log_sum(const std::vector<double>& logs) {
    const double most = *std::max_element(logs.begin(), logs.end());
    double sum = 0;
    for (const double each : logs) {
        sum += std::exp(each - most);
    }
    return most + std::log(sum);
}

/// The same for every size of noise: J^T J with the priors' scales taken in, by its eigenvectors.
struct Diagonal {
    Diagonal(const Sums& sums, VectorXd scale) : scales(std::move(scale)) {
        const MatrixXd scaled = scales.asDiagonal() * sums.jj * scales.asDiagonal();
        const Eigen::SelfAdjointEigenSolver<MatrixXd> solver(scaled);
        values = solver.eigenvalues().cwiseMax(0);
        vectors = solver.eigenvectors();
        b = vectors.transpose() * scales.cwiseProduct(sums.jy);
    }
    /// (D7).
    [[nodiscard]] double log_evidence(const Sums& sums, double noise) const {
        const double variance = noise * noise;
        double quadratic = sums.yy / variance;
        double log_determinant = sums.count * std::log(variance);
        for (Index k = 0; k < values.size(); ++k) {
            const double gain = 1 + values[k] / variance;
            quadratic -= b[k] * b[k] / (variance * variance * gain);
            log_determinant += std::log(gain);
        }
        return -0.5 * (quadratic + log_determinant + sums.count * log_two_pi);
    }
    VectorXd scales, values, b;
    MatrixXd vectors;
};

} // namespace

Sums::Sums(Index parameters) : jj(MatrixXd::Zero(parameters, parameters)), jy(VectorXd::Zero(parameters)) {}

void Sums::add(const VectorXd& row, double y, double sign) {
    jj.noalias() += sign * row * row.transpose();
    jy += sign * y * row;
    yy += sign * y * y;
    count += sign > 0 ? 1 : -1;
}

Posterior::Posterior(const Sums& sums, const Sizes& sizes) {
    const Index parameters = sums.jy.size();
    std::vector<Diagonal> diagonals;
    std::vector<double> logs;
    for (const SizeNode& node : sizes.parts) {
        diagonals.emplace_back(sums, scales_of(node, sizes.smooth_from, parameters));
        for (const Node& noise : sizes.noise) {
            logs.push_back(std::log(node.share * noise.share) +
                           diagonals.back().log_evidence(sums, noise.value));
        }
    }
    log_evidence_ = log_sum(logs);
    std::size_t at = 0;
    for (const Diagonal& d : diagonals) {
        for (const Node& noise : sizes.noise) {
            const double weight = std::exp(logs[at++] - log_evidence_);
            if (weight < least_weight) {
                continue;
            }
            const double variance = noise.value * noise.value;
            const VectorXd gains = (1 + d.values.array() / variance).matrix();
            const MatrixXd back = d.scales.asDiagonal() * d.vectors;
            parts_.push_back({weight, noise.value, &d == &diagonals.back(),
                              back * d.b.cwiseQuotient(gains) / variance,
                              back * gains.cwiseSqrt().cwiseInverse().asDiagonal()});
        }
    }
}

VectorXd Posterior::mean() const {
    VectorXd sum = VectorXd::Zero(parts_.front().mean.size());
    double weights = 0;
    for (const Part& part : parts_) {
        sum += part.weight * part.mean;
        weights += part.weight;
    }
    return sum / weights;
}

Mixture Posterior::of(const VectorXd& row) const {
    Mixture mixture;
    mixture.reserve(parts_.size());
    for (const Part& part : parts_) {
        mixture.push_back(
            {part.weight, row.dot(part.mean), (part.half.transpose() * row).norm(), part.noise});
    }
    return mixture;
}

// For one size the other points' answer follows from the hat value, (D8); the sizes' weights lose the
// point's own density.
Mixture Posterior::without(const VectorXd& row, double y) const {
    Mixture mixture = of(row);
    std::vector<double> logs;
    for (Member& member : mixture) {
        const double noise_variance = member.noise * member.noise;
        const double hat = std::min(member.deviation * member.deviation / noise_variance, 1 - 1e-12);
        const double residual = (y - member.mean) / (1 - hat);
        const double variance = noise_variance / (1 - hat); // of the reading
        member.mean = y - residual;
        member.deviation = std::sqrt(std::max(0.0, variance - noise_variance));
        logs.push_back(std::log(member.weight) +
                       0.5 * (residual * residual / variance + std::log(variance) + log_two_pi));
    }
    const double all = log_sum(logs);
    for (std::size_t i = 0; i < mixture.size(); ++i) {
        mixture[i].weight = std::exp(logs[i] - all);
    }
    return mixture;
}

MatrixXd Posterior::variances_after(const MatrixXd& wanted, const MatrixXd& taken,
                                    const MatrixXd& candidates) const {
    MatrixXd result = MatrixXd::Zero(wanted.cols(), std::max<Index>(1, candidates.cols()));
    double weights = 0;
    for (const Part& part : parts_) {
        const double noise = part.noise * part.noise;
        MatrixXd left = MatrixXd::Identity(part.half.cols(), part.half.cols()); // of the covariance
        if (taken.cols() > 0) {
            const MatrixXd a = part.half.transpose() * taken;
            MatrixXd gram = a.transpose() * a;
            gram.diagonal().array() += noise;
            left -= a * gram.ldlt().solve(a.transpose());
        }
        const MatrixXd b = part.half.transpose() * wanted;
        const MatrixXd left_b = left * b;
        const VectorXd now = b.cwiseProduct(left_b).colwise().sum().transpose();
        for (Index k = 0; k < result.cols(); ++k) {
            VectorXd after = now;
            if (candidates.cols() > 0) {
                const VectorXd c = part.half.transpose() * candidates.col(k);
                after -= (left_b.transpose() * c).cwiseAbs2() / (c.dot(left * c) + noise);
            }
            result.col(k) += part.weight * after;
        }
        weights += part.weight;
    }
    return (result / weights).cwiseMax(0);
}

double Posterior::last_part() const {
    double share = 0;
    for (const Part& part : parts_) {
        share += part.last ? part.weight : 0;
    }
    return share;
}

std::vector<Node> Posterior::noise() const {
    std::vector<Node> nodes;
    for (const Part& part : parts_) {
        const auto same = std::find_if(nodes.begin(), nodes.end(),
                                       [&](const Node& node) { return node.value == part.noise; });
        if (same != nodes.end()) {
            same->share += part.weight;
        } else {
            nodes.push_back({part.noise, part.weight});
        }
    }
    std::sort(nodes.begin(), nodes.end(), [](const Node& a, const Node& b) { return a.value < b.value; });
    return nodes;
}

} // namespace loopwright::tuning::detail
