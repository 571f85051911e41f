// One ray a cell by Embree 3 on one thread, for tests/bench/embree/native.ts.
//
// rays FILE: reads a scene and cells, builds the tree, prints "ready MILLISECONDS", then answers a line a word read:
//   single | packet8 | packet16 | packet8coherent | packet16coherent   prints the milliseconds of all rays
//   answers FILE                                        writes a byte a ray, 1 where the last run met a face
//
// FILE, little-endian: int32 triangles, cameras, then the rays of each camera; padding to 8 bytes; then doubles: nine a
// triangle, three a lens, three a target.
#include <embree3/rtcore.h>
#include <xmmintrin.h>
#include <pmmintrin.h>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <limits>
#include <string>
#include <vector>

namespace {

// Hits nearer than this to either end do not count, as for the other references.
constexpr double slack = 0.001;

struct Rays {
  float eye[3];
  std::vector<float> x, y, z, far;
};

double now() {
  using namespace std::chrono;
  return duration<double, std::milli>(steady_clock::now().time_since_epoch()).count();
}

RTCIntersectContext contextOf(bool coherent) {
  RTCIntersectContext context;
  rtcInitIntersectContext(&context);
  context.flags = coherent ? RTC_INTERSECT_CONTEXT_FLAG_COHERENT : RTC_INTERSECT_CONTEXT_FLAG_INCOHERENT;
  return context;
}

void single(RTCScene scene, const Rays& rays, std::uint8_t* hidden) {
  RTCIntersectContext context = contextOf(false);
  RTCRayHit one;
  for (std::size_t at = 0; at < rays.x.size(); at += 1) {
    one.ray.org_x = rays.eye[0];
    one.ray.org_y = rays.eye[1];
    one.ray.org_z = rays.eye[2];
    one.ray.dir_x = rays.x[at];
    one.ray.dir_y = rays.y[at];
    one.ray.dir_z = rays.z[at];
    one.ray.tnear = float(slack);
    one.ray.tfar = rays.far[at];
    one.ray.time = 0;
    one.ray.mask = ~0u;
    one.ray.id = 0;
    one.ray.flags = 0;
    one.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    one.hit.instID[0] = RTC_INVALID_GEOMETRY_ID;
    rtcIntersect1(scene, &context, &one);
    hidden[at] = one.hit.geomID != RTC_INVALID_GEOMETRY_ID;
  }
}

template <int N, typename Packet, void (*intersect)(const int*, RTCScene, RTCIntersectContext*, Packet*)>
void packets(RTCScene scene, const Rays& rays, bool coherent, std::uint8_t* hidden) {
  RTCIntersectContext context = contextOf(coherent);
  alignas(64) int valid[N];
  alignas(64) Packet many;
  const std::size_t count = rays.x.size();
  for (std::size_t from = 0; from < count; from += N) {
    for (int lane = 0; lane < N; lane += 1) {
      const std::size_t at = from + lane < count ? from + lane : count - 1;
      valid[lane] = from + lane < count ? -1 : 0;
      many.ray.org_x[lane] = rays.eye[0];
      many.ray.org_y[lane] = rays.eye[1];
      many.ray.org_z[lane] = rays.eye[2];
      many.ray.dir_x[lane] = rays.x[at];
      many.ray.dir_y[lane] = rays.y[at];
      many.ray.dir_z[lane] = rays.z[at];
      many.ray.tnear[lane] = float(slack);
      many.ray.tfar[lane] = rays.far[at];
      many.ray.time[lane] = 0;
      many.ray.mask[lane] = ~0u;
      many.ray.id[lane] = lane;
      many.ray.flags[lane] = 0;
      many.hit.geomID[lane] = RTC_INVALID_GEOMETRY_ID;
      many.hit.instID[0][lane] = RTC_INVALID_GEOMETRY_ID;
    }
    intersect(valid, scene, &context, &many);
    for (int lane = 0; lane < N && from + lane < count; lane += 1)
      hidden[from + lane] = many.hit.geomID[lane] != RTC_INVALID_GEOMETRY_ID;
  }
}

template <typename T>
std::vector<T> read(std::ifstream& file, std::size_t count) {
  std::vector<T> list(count);
  file.read(reinterpret_cast<char*>(list.data()), std::streamsize(count * sizeof(T)));
  return list;
}

}  // namespace

int main(int count, char** words) {
  if (count < 2) return 2;
  // As Embree's manual advises: denormal numbers as zero.
  _MM_SET_FLUSH_ZERO_MODE(_MM_FLUSH_ZERO_ON);
  _MM_SET_DENORMALS_ZERO_MODE(_MM_DENORMALS_ZERO_ON);
  std::ifstream file(words[1], std::ios::binary);
  const auto head = read<std::int32_t>(file, 2);
  const std::size_t triangles = head[0], cameras = head[1];
  const auto amounts = read<std::int32_t>(file, cameras + cameras % 2);
  const auto corners = read<double>(file, triangles * 9);
  const auto eyes = read<double>(file, cameras * 3);
  std::vector<Rays> all(cameras);
  std::size_t total = 0;
  for (std::size_t camera = 0; camera < cameras; camera += 1) {
    const auto targets = read<double>(file, std::size_t(amounts[camera]) * 3);
    Rays& rays = all[camera];
    for (int axis = 0; axis < 3; axis += 1) rays.eye[axis] = float(eyes[camera * 3 + axis]);
    for (std::size_t at = 0; at < targets.size(); at += 3) {
      const double x = targets[at] - eyes[camera * 3];
      const double y = targets[at + 1] - eyes[camera * 3 + 1];
      const double z = targets[at + 2] - eyes[camera * 3 + 2];
      const double length = std::sqrt(x * x + y * y + z * z);
      rays.x.push_back(float(x / length));
      rays.y.push_back(float(y / length));
      rays.z.push_back(float(z / length));
      rays.far.push_back(float(length - slack));
    }
    total += rays.x.size();
  }
  if (!file) return 2;

  RTCDevice device = rtcNewDevice("threads=1,set_affinity=0");
  RTCScene scene = rtcNewScene(device);
  rtcSetSceneBuildQuality(scene, RTC_BUILD_QUALITY_HIGH);
  RTCGeometry mesh = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  auto* points = static_cast<float*>(rtcSetNewGeometryBuffer(
      mesh, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), triangles * 3));
  auto* indices = static_cast<unsigned*>(rtcSetNewGeometryBuffer(
      mesh, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(unsigned), triangles));
  for (std::size_t at = 0; at < triangles * 9; at += 1) points[at] = float(corners[at]);
  for (std::size_t at = 0; at < triangles * 3; at += 1) indices[at] = unsigned(at);
  rtcCommitGeometry(mesh);
  rtcAttachGeometry(scene, mesh);
  rtcReleaseGeometry(mesh);
  const double start = now();
  rtcCommitScene(scene);
  std::cout << "ready " << now() - start << std::endl;

  std::vector<std::uint8_t> hidden(total);
  std::string word;
  while (std::cin >> word) {
    if (word == "answers") {
      std::string name;
      std::cin >> name;
      std::ofstream(name, std::ios::binary).write(reinterpret_cast<char*>(hidden.data()), std::streamsize(total));
      std::cout << "written" << std::endl;
      continue;
    }
    const bool coherent = word.size() > 8 && word.substr(word.size() - 8) == "coherent";
    const double began = now();
    std::uint8_t* into = hidden.data();
    for (const Rays& rays : all) {
      if (word == "single") single(scene, rays, into);
      else if (word.rfind("packet8", 0) == 0) packets<8, RTCRayHit8, rtcIntersect8>(scene, rays, coherent, into);
      else if (word.rfind("packet16", 0) == 0) packets<16, RTCRayHit16, rtcIntersect16>(scene, rays, coherent, into);
      else return 2;
      into += rays.x.size();
    }
    std::cout << now() - began << std::endl;
  }
  rtcReleaseScene(scene);
  rtcReleaseDevice(device);
  return 0;
}
