// The other side of bench/clearance.sh: FCL 0.7 (Debian libfcl-dev) on the poses and scenes that Throwright.Bench wrote.
// Prints processor time; writes the distances, one line a workload, for comparison.
#include <fcl/fcl.h>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <memory>
#include <string>
#include <vector>

using namespace fcl;
using Geometry = std::shared_ptr<CollisionGeometryd>;

static std::vector<double> data;
static size_t at = 0;
static double next() { return data.at(at++); }
static Vector3d vec() { double x = next(), y = next(), z = next(); return Vector3d(x, y, z); }
static Transform3d pose() {
  Matrix3d r;
  for (int i = 0; i < 3; i++) r.col(i) = vec();
  Transform3d t = Transform3d::Identity();
  t.linear() = r;
  t.translation() = vec();
  return t;
}
static double now() { timespec t; clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t); return t.tv_sec + 1e-9 * t.tv_nsec; }

static Geometry shape() {
  int kind = (int)next();
  double a = next(), b = next(), c = next();
  switch (kind) {
    case 0: return std::make_shared<Sphered>(a);
    case 1: return std::make_shared<Capsuled>(a, 2 * b);
    case 2: return std::make_shared<Boxd>(2 * a, 2 * b, 2 * c);
    default: return std::make_shared<Cylinderd>(a, 2 * b);
  }
}

static DistanceRequestd request(GJKSolverType solver) {
  DistanceRequestd r(false, false);
  r.gjk_solver_type = solver;
  r.distance_tolerance = 1e-6;
  return r;
}
static double distance(const CollisionGeometryd* a, const Transform3d& p, const CollisionGeometryd* b, const Transform3d& q, const DistanceRequestd& r) {
  DistanceResultd result;
  fcl::distance(a, p, b, q, r, result);
  return result.min_distance;
}

struct Joint { bool turn; Vector3d through, axis; double from, to;
  Transform3d operator()(double q) const {
    Transform3d t = Transform3d::Identity();
    if (turn) { t.linear() = Eigen::AngleAxisd(q, axis).toRotationMatrix(); t.translation() = through - t.linear() * through; }
    else t.translation() = q * axis;
    return t;
  }
};
struct Body { std::vector<Geometry> shapes; std::vector<Transform3d> places; std::vector<Joint> joints; };

// All poses of a body on a grid of n positions a joint.
static std::vector<Transform3d> grid(const Body& b, int n) {
  std::vector<Transform3d> all{Transform3d::Identity()};
  for (auto& j : b.joints) {
    std::vector<Transform3d> more;
    for (auto& t : all)
      for (int i = 0; i < n; i++) more.push_back(t * j(j.from + (j.to - j.from) * i / (n - 1)));
    all.swap(more);
  }
  return all;
}

static std::ofstream answers;
static void record(const std::string& name, const std::vector<double>& d) {
  answers << name;
  char text[40];
  for (double v : d) { snprintf(text, sizeof text, " %.17g", v); answers << text; }
  answers << "\n";
}

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  std::ifstream file(argv[1], std::ios::binary | std::ios::ate);
  data.resize(file.tellg() / sizeof(double));
  file.seekg(0);
  file.read((char*)data.data(), data.size() * sizeof(double));
  answers.open(argv[2]);
  const char* names[] = {"capsule-capsule", "ball-capsule", "box-box", "capsule-box", "cylinder-box", "cylinder-cylinder"};
  int pairs = 0;
  std::vector<std::shared_ptr<BVHModel<OBBRSSd>>> meshes;
  std::vector<double> sampled;
  double sampledTime = 0, sampledQueries = 0, sampledWorst = 0;
  int scenes = 0, reached = 0;
  while (at < data.size()) {
    int type = (int)next();
    if (type == 0) {
      int corners = (int)next(), triangles = (int)next();
      std::vector<Vector3d> points;
      std::vector<Triangle> faces;
      for (int i = 0; i < corners; i++) points.push_back(vec());
      for (int i = 0; i < triangles; i++) { size_t a = (size_t)next(), b = (size_t)next(), c = (size_t)next(); faces.emplace_back(a, b, c); }
      double start = now();
      auto model = std::make_shared<BVHModel<OBBRSSd>>();
      model->beginModel();
      model->addSubModel(points, faces);
      model->endModel();
      printf("mesh-build-%dk: FCL %.0f ms\n", (triangles + 500) / 1000, 1000 * (now() - start));
      meshes.push_back(model);
    } else if (type == 1) {
      int n = (int)next();
      Geometry a = shape(), b = shape();
      std::vector<std::pair<Transform3d, Transform3d>, Eigen::aligned_allocator<std::pair<Transform3d, Transform3d>>> poses;
      for (int i = 0; i < n; i++) { Transform3d p = pose(); Transform3d q = pose(); poses.emplace_back(p, q); }
      std::string name = std::string("distance-") + names[pairs++];
      std::vector<double> d(n), other(n);
      double rate[2];
      for (int s = 0; s < 2; s++) {
        auto r = request(s == 0 ? GST_LIBCCD : GST_INDEP);
        double best = 1e300;
        for (int round = 0; round < 5; round++) {
          double start = now();
          for (int i = 0; i < n; i++) (s == 0 ? d : other)[i] = distance(a.get(), poses[i].first, b.get(), poses[i].second, r);
          best = std::min(best, now() - start);
        }
        rate[s] = n / best / 1e6;
      }
      printf("%s: FCL %.2f M/s (its other solver %.2f)\n", name.c_str(), rate[0], rate[1]);
      record(name, d);
    } else if (type == 2 || type == 3) {
      int n = (int)next();
      Geometry rod = shape();
      std::vector<double> d(n);
      std::vector<Transform3d, Eigen::aligned_allocator<Transform3d>> p(n), q(n);
      for (int i = 0; i < n; i++) { p[i] = pose(); q[i] = pose(); }
      const CollisionGeometryd* second = type == 2 ? rod.get() : meshes[1].get();
      auto r = request(GST_LIBCCD);
      double best = 1e300;
      for (int round = 0; round < 2; round++) {
        double start = now();
        for (int i = 0; i < n; i++) d[i] = distance(meshes[0].get(), p[i], second, q[i], r);
        best = std::min(best, now() - start);
      }
      std::string name = type == 2 ? "distance-mesh-100k-capsule" : "distance-mesh-100k-mesh-20k";
      printf("%s: FCL %.0f /s\n", name.c_str(), n / best);
      record(name, d);
    } else {
      // Sampled: a grid that is made finer until its least is within 0.1 mm of what was proved; the finest only is timed.
      double upper = next();
      Body body[2];
      for (auto& b : body) {
        int m = (int)next();
        for (int i = 0; i < m; i++) { b.shapes.push_back(shape()); b.places.push_back(pose()); }
      }
      for (auto& b : body) {
        int m = (int)next();
        for (int i = 0; i < m; i++) { Joint j; j.turn = next() == 1; j.through = vec(); j.axis = vec(); j.from = next(); j.to = next(); b.joints.push_back(j); }
      }
      auto r = request(GST_LIBCCD);
      double least = 1e300, took = 0, queries = 0;
      for (int n : {3, 5, 9, 13, 17, 21}) {
        double start = now();
        auto first = grid(body[0], n), second = grid(body[1], n);
        least = 1e300;
        queries = 0;
        for (size_t i = 0; i < body[0].shapes.size(); i++)
          for (size_t k = 0; k < body[1].shapes.size(); k++)
            for (auto& t : first) {
              Transform3d p = t * body[0].places[i];
              for (auto& u : second) {
                least = std::min(least, distance(body[0].shapes[i].get(), p, body[1].shapes[k].get(), u * body[1].places[k], r));
                queries++;
              }
            }
        took = now() - start;
        if (least <= upper + 1e-4) break;
      }
      scenes++;
      reached += least <= upper + 1e-4;
      sampledTime += took;
      sampledQueries += queries;
      sampledWorst = std::max(sampledWorst, took);
      sampled.push_back(least);
    }
  }
  printf("sampled-%d: FCL %.0f ms mean a scene, worst %.0f ms, %.0f queries mean; within 0.1 mm in %d of %d with at most 21 positions a joint; no proof\n", scenes,
         1000 * sampledTime / scenes, 1000 * sampledWorst, sampledQueries / scenes, reached, scenes);
  record("sampled-12", sampled);
}
