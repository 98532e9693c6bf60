#pragma once
// A point or a direction in space, plain doubles: positions in metres, directions of unit length.
#include <cmath>

namespace loopwright::geometry {

struct Vector3 {
    double x = 0, y = 0, z = 0;
    bool operator==(const Vector3&) const = default;
};

constexpr Vector3 operator+(const Vector3& a, const Vector3& b) noexcept {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Vector3 operator-(const Vector3& a, const Vector3& b) noexcept {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Vector3 operator*(double factor, const Vector3& a) noexcept {
    return {factor * a.x, factor * a.y, factor * a.z};
}
[[nodiscard]] constexpr double dot(const Vector3& a, const Vector3& b) noexcept {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
[[nodiscard]] constexpr Vector3 cross(const Vector3& a, const Vector3& b) noexcept {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(const Vector3& a) noexcept {
    return std::sqrt(dot(a, a));
}
/// a / |a|; the zero vector stays zero.
[[nodiscard]] inline Vector3 unit(const Vector3& a) noexcept {
    const double length = norm(a);
    return length > 0 ? (1.0 / length) * a : a;
}

} // namespace loopwright::geometry
