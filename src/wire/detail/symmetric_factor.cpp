#include "wire/detail/symmetric_factor.hpp"

#include "wire/detail/clones.hpp"

namespace loopwright::wire::detail {

namespace {

constexpr std::size_t row(std::size_t i) noexcept {
    return i * (i + 1) / 2;
}

// Column by column; work_re, work_im: n numbers each. Real and imaginary parts apart, so that the inner loop
// fills vector units.
LOOPWRIGHT_WIDE void factorise(double* __restrict re, double* __restrict im, double* __restrict work_re,
                               double* __restrict work_im, std::size_t n) {
    for (std::size_t j = 0; j < n; ++j) {
        const double d_re = re[row(j) + j];
        const double d_im = im[row(j) + j];
        const double size = d_re * d_re + d_im * d_im;
        const double inverse_re = d_re / size;
        const double inverse_im = -d_im / size;
        re[row(j) + j] = inverse_re;
        im[row(j) + j] = inverse_im;
        for (std::size_t i = j + 1; i < n; ++i) {
            work_re[i] = re[row(i) + j];
            work_im[i] = im[row(i) + j];
            const double l_re = work_re[i] * inverse_re - work_im[i] * inverse_im;
            const double l_im = work_re[i] * inverse_im + work_im[i] * inverse_re;
            re[row(i) + j] = l_re;
            im[row(i) + j] = l_im;
            double* __restrict to_re = re + row(i);
            double* __restrict to_im = im + row(i);
            for (std::size_t k = j + 1; k <= i; ++k) {
                to_re[k] -= l_re * work_re[k] - l_im * work_im[k];
                to_im[k] -= l_re * work_im[k] + l_im * work_re[k];
            }
        }
    }
}

struct Parts {
    double re, im;
};

} // namespace

SymmetricFactor::SymmetricFactor(std::vector<double> re, std::vector<double> im, std::size_t n)
    : re_(std::move(re)), im_(std::move(im)), n_(n) {
    std::vector<double> work(2 * n);
    factorise(re_.data(), im_.data(), work.data(), work.data() + n, n);
}

void SymmetricFactor::solve(std::span<std::complex<double>> x) const {
    const auto entry = [this](std::size_t i, std::size_t k) {
        return Parts{re_[row(i) + k], im_[row(i) + k]};
    };
    const auto product = [](const Parts& a, const std::complex<double>& b) {
        return std::complex<double>(a.re * b.real() - a.im * b.imag(), a.re * b.imag() + a.im * b.real());
    };
    for (std::size_t i = 0; i < n_; ++i) {
        std::complex<double> sum = x[i];
        for (std::size_t k = 0; k < i; ++k) {
            sum -= product(entry(i, k), x[k]);
        }
        x[i] = sum;
    }
    for (std::size_t i = 0; i < n_; ++i) {
        x[i] = product(entry(i, i), x[i]);
    }
    for (std::size_t i = n_; i-- > 1;) {
        for (std::size_t k = 0; k < i; ++k) {
            x[k] -= product(entry(i, k), x[i]);
        }
    }
}

} // namespace loopwright::wire::detail
