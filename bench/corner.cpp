// The corner by a Newton loop: pose of the upright (six unknowns, analytic Jacobian), then the rocker angle.
// Warm sweep; see corner.ts. Position only.
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <utility>
#include <vector>

struct V { double x, y, z; };
static V operator+(V a, V b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
static V operator-(V a, V b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
static V operator*(double k, V a) { return {k * a.x, k * a.y, k * a.z}; }
static double dot(V a, V b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static V cross(V a, V b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
static double norm(V a) { return std::sqrt(dot(a, a)); }

/** v turned by the rotation vector w. */
static V turned(V v, V w) {
  double t = norm(w);
  if (t < 1e-14) return v + cross(w, v);
  V k = (1 / t) * w;
  double c = std::cos(t), s = std::sin(t);
  return c * v + s * cross(k, v) + ((1 - c) * dot(k, v)) * k;
}

static bool solve6(double a[6][7]) {
  for (int i = 0; i < 6; i++) {
    int p = i;
    for (int r = i + 1; r < 6; r++) if (std::fabs(a[r][i]) > std::fabs(a[p][i])) p = r;
    if (a[p][i] == 0) return false;
    if (p != i) for (int c = i; c < 7; c++) std::swap(a[i][c], a[p][c]);
    double inverse = 1 / a[i][i];
    for (int r = i + 1; r < 6; r++) {
      double f = a[r][i] * inverse;
      for (int c = i + 1; c < 7; c++) a[r][c] -= f * a[i][c];
    }
  }
  for (int i = 5; i >= 0; i--) {
    double v = a[i][6];
    for (int c = i + 1; c < 6; c++) v -= a[i][c] * a[c][6];
    a[i][6] = v / a[i][i];
  }
  return true;
}

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  std::ifstream in(argv[1]);
  std::vector<double> n;
  for (double v; in >> v;) n.push_back(v);
  auto at = [&](int i) { return V{n[3 * i], n[3 * i + 1], n[3 * i + 2]}; };
  V UF = at(0), UR = at(1), U = at(2), LF = at(3), LR = at(4), L = at(5), TI = at(6), T = at(7);
  V RO0 = at(8), RI0 = at(9), P = at(10), axis = at(11) - P, W = at(12), N = at(13);
  double R = n[42];
  std::vector<double> sweep(n.begin() + 44, n.end());

  const V innerOf[5] = {UF, UR, LF, LR, TI};
  const double length[5] = {norm(U - UF), norm(U - UR), norm(L - LF), norm(L - LR), norm(T - TI)};
  const double ground = W.z - R * std::sqrt(1 - N.z * N.z), rod = norm(RO0 - RI0);
  V la = (1 / norm(LF - LR)) * (LF - LR);
  V foot = LR + dot(L - LR, la) * la, r0 = L - foot, q0 = cross(la, r0);
  double r2 = dot(r0, r0);
  V roF = LR + dot(RO0 - LR, la) * la, roR = RO0 - roF, roQ = cross(la, roR);
  V riF = P + dot(RI0 - P, axis) * axis, riR = RI0 - riF, riQ = cross(axis, riR);
  double theta = 0;

  auto solve = [&](double travel) {
    for (int iteration = 0; iteration < 30; iteration++) {
      double a[6][7];
      double worst = 0;
      const V outer[5] = {U, U, L, L, T};
      for (int i = 0; i < 5; i++) {
        V d = outer[i] - innerOf[i];
        double l = norm(d);
        V u = (1 / l) * d, m = cross(outer[i] - L, u);
        a[i][0] = u.x; a[i][1] = u.y; a[i][2] = u.z;
        a[i][3] = m.x; a[i][4] = m.y; a[i][5] = m.z;
        a[i][6] = length[i] - l;
        worst = std::fmax(worst, std::fabs(a[i][6]));
      }
      double g = std::sqrt(1 - N.z * N.z);
      V m = cross(W - L, V{0, 0, 1});
      a[5][0] = 0; a[5][1] = 0; a[5][2] = 1;
      a[5][3] = m.x + R * N.z / g * N.y; a[5][4] = m.y - R * N.z / g * N.x; a[5][5] = m.z;
      a[5][6] = travel - (W.z - R * g - ground);
      worst = std::fmax(worst, std::fabs(a[5][6]));
      if (worst < 1e-12) break;
      if (!solve6(a)) std::exit(3);
      V shift{a[0][6], a[1][6], a[2][6]}, turn{a[3][6], a[4][6], a[5][6]};
      V k = L;
      U = k + shift + turned(U - k, turn);
      T = k + shift + turned(T - k, turn);
      W = k + shift + turned(W - k, turn);
      N = turned(N, turn);
      L = k + shift;
    }
    V d = L - foot;
    double c = dot(d, r0) / r2, s = dot(d, q0) / r2;
    V ro = roF + c * roR + s * roQ;
    for (int iteration = 0; iteration < 30; iteration++) {
      double ct = std::cos(theta), st = std::sin(theta);
      V u = riF + ct * riR + st * riQ - ro, e = ct * riQ - st * riR;
      double l = norm(u), miss = rod - l;
      if (std::fabs(miss) < 1e-13) break;
      theta += miss * l / dot(u, e);
    }
    return theta;
  };

  for (int i = 0; i <= 20; i++) solve(sweep[0] * i / 20);
  using clock = std::chrono::steady_clock;
  auto start = clock::now();
  long count = 0;
  double total = 0, seconds = 0;
  while (seconds < 1) {
    total = 0;
    for (double travel : sweep) total += solve(travel);
    count += static_cast<long>(sweep.size());
    seconds = std::chrono::duration<double>(clock::now() - start).count();
  }
  std::printf("%.1f %.15g\n", count / seconds, total);
}
