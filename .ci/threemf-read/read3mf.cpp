// Opens 3MF files with lib3mf, the 3MF Consortium's own library, in its strict
// mode, where every warning is an error, and says what it found: one JSON line an
// object in the build. Exit 1 if a file cannot be read so, is not in millimetres,
// has an object without a name, without triangles, not manifold and oriented, not
// valid for the build, or has nothing to build.
//
// For lib3mf 1.8 (Debian 12, lib3mf-dev):
//   g++ -std=c++17 -I/usr/include/lib3mf read3mf.cpp -o read3mf -l3MF

#include <cstdio>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <vector>

#include "Model/COM/NMR_DLLInterfaces.h"

using namespace NMR;

static void must(LIB3MFRESULT r, PLib3MFBase *instance, const char *what) {
  if (r == 0) return;
  std::string text = what;
  DWORD code = 0;
  LPCSTR message = nullptr;
  if (instance && lib3mf_getlasterror(instance, &code, &message) == 0 && message) text += std::string(": ") + message;
  throw std::runtime_error(text);
}

static std::string quoted(const std::string &s) {
  std::string out = "\"";
  for (unsigned char c : s) {
    char hex[8];
    if (c == '"' || c == '\\') (out += '\\') += c;
    else if (c < 0x20) out += (snprintf(hex, sizeof hex, "\\u%04x", c), hex);
    else out += c;
  }
  return out + '"';
}

// text calls one of the library's getters twice: for the length, for the bytes.
template <class Getter> static std::string text(Getter get) {
  ULONG needed = 0;
  must(get(nullptr, 0, &needed), nullptr, "length of a text");
  std::vector<char> buffer(needed + 1, 0);
  must(get(buffer.data(), needed + 1, &needed), nullptr, "a text");
  return buffer.data();
}

static bool check(const std::string &path) {
  const std::string name = path.substr(path.find_last_of('/') + 1);
  std::string lines, metadata, faults;
  auto fault = [&](const std::string &f) { faults += (faults.empty() ? "" : ",") + quoted(f); };
  PLib3MFModel *model = nullptr;
  PLib3MFModelReader *reader = nullptr;
  try {
    must(lib3mf_createmodel(&model), nullptr, "make a model");
    must(lib3mf_model_queryreader(model, "3mf", &reader), model, "make a reader");
    must(lib3mf_reader_setstrictmodeactive(reader, 1), reader, "set strict mode");
    must(lib3mf_reader_readfromfileutf8(reader, path.c_str()), reader, "read");
    DWORD warnings = 0;
    must(lib3mf_reader_getwarningcount(reader, &warnings), reader, "count warnings");
    for (DWORD i = 0; i < warnings; i++) {
      DWORD code = 0;
      fault("warning: " + text([&](LPSTR b, ULONG n, ULONG *need) { return lib3mf_reader_getwarningutf8(reader, i, &code, b, n, need); }));
    }
    DWORD unit = 0, count = 0;
    must(lib3mf_model_getunit(model, &unit), model, "unit");
    if (unit != MODELUNIT_MILLIMETER) fault("unit number " + std::to_string(unit) + ", not millimetres");
    must(lib3mf_model_getmetadatacount(model, &count), model, "count metadata");
    for (DWORD i = 0; i < count; i++) {
      metadata += (i ? "," : "") + quoted(text([&](LPSTR b, ULONG n, ULONG *need) { return lib3mf_model_getmetadatakeyutf8(model, i, b, n, need); })) + ":" +
                  quoted(text([&](LPSTR b, ULONG n, ULONG *need) { return lib3mf_model_getmetadatavalueutf8(model, i, b, n, need); }));
    }
    PLib3MFModelBuildItemIterator *items = nullptr;
    must(lib3mf_model_getbuilditems(model, &items), model, "build");
    int built = 0;
    for (BOOL more = 0;; built++) {
      must(lib3mf_builditemiterator_movenext(items, &more), items, "next of the build");
      if (!more) break;
      PLib3MFModelBuildItem *item = nullptr;
      PLib3MFModelObjectResource *object = nullptr;
      DWORD id = 0, vertices = 0, triangles = 0;
      BOOL valid = 0, manifold = 0;
      PLib3MFModelMeshObject *mesh = nullptr;
      must(lib3mf_builditemiterator_getcurrent(items, &item), items, "build item");
      must(lib3mf_builditem_getobjectresource(item, &object), item, "object of a build item");
      must(lib3mf_resource_getresourceid(object, &id), object, "object id");
      must(lib3mf_object_isvalidobject(object, &valid), object, "validity");
      must(lib3mf_model_getmeshobjectbyid(model, id, &mesh), model, "mesh object");
      must(lib3mf_meshobject_getvertexcount(mesh, &vertices), mesh, "count vertices");
      must(lib3mf_meshobject_gettrianglecount(mesh, &triangles), mesh, "count triangles");
      must(lib3mf_meshobject_ismanifoldandoriented(mesh, &manifold), mesh, "manifold");
      const std::string title = text([&](LPSTR b, ULONG n, ULONG *need) { return lib3mf_object_getnameutf8(object, b, n, need); });
      const std::string part = text([&](LPSTR b, ULONG n, ULONG *need) { return lib3mf_object_getpartnumberutf8(object, b, n, need); });
      if (title.empty()) fault("an object without a name");
      if (!valid) fault(title + ": not valid");
      if (!manifold) fault(title + ": not manifold and oriented");
      if (triangles == 0) fault(title + ": no triangles");
      lines += (lines.empty() ? "" : "\n") + std::string("{\"file\":") + quoted(name) + ",\"name\":" + quoted(title) + ",\"unit\":\"" +
               (unit == MODELUNIT_MILLIMETER ? "millimeter" : std::to_string(unit)) + "\",\"part_number\":" + quoted(part) +
               ",\"vertices\":" + std::to_string(vertices) + ",\"triangles\":" + std::to_string(triangles) +
               ",\"manifold\":" + (manifold ? "true" : "false") + ",\"metadata\":{" + metadata + "}}";
      lib3mf_release(mesh);
      lib3mf_release(object);
      lib3mf_release(item);
    }
    if (built == 0) fault("nothing to build");
    lib3mf_release(items);
  } catch (const std::exception &e) {
    fault(e.what());
  }
  if (reader) lib3mf_release(reader);
  if (model) lib3mf_release(model);
  if (!lines.empty()) puts(lines.c_str());
  if (!faults.empty()) printf("{\"file\":%s,\"faults\":[%s]}\n", quoted(name).c_str(), faults.c_str());
  return faults.empty();
}

int main(int argc, char **argv) {
  if (argc < 2) {
    fputs("usage: read3mf FILE.3mf ...\n", stderr);
    return 2;
  }
  bool sound = true;
  for (int i = 1; i < argc; i++) sound = check(argv[i]) && sound;
  return sound ? EXIT_SUCCESS : EXIT_FAILURE;
}
