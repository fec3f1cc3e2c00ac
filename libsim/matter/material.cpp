#include "libsim/matter/material.h"

#include <cmath>
#include <concepts>
#include <type_traits>

#include "libsim/base/cases.h"
#include "libsim/matter/fresnel.h"

namespace fillside {
namespace {

/// One lambda for several kinds, by name: a kind that is added later is not answered by it unasked.
template <class Kind, class... Named>
concept OneOf = (std::same_as<Kind, Named> || ...);

template <class Kind, class Answers>
constexpr bool is_answered() {
  constexpr bool answered = std::is_invocable_v<const Answers&, const Kind&>;
  static_assert(answered, "this question is not answered for the material `Kind`: add its case");
  return answered;
}

/// The answer for the kind that a material is.
template <class Answers, class... Kinds>
auto answer(const std::variant<Kinds...>& material, const Answers& answers) {
  if constexpr ((is_answered<Kinds, Answers>() && ...)) return std::visit(answers, material);
}

// A verb that a kind lacks would be looked for among those of Material, which every kind turns into: it would
// compile, and call itself for ever. So each kind is asked for verbs of exactly its own type.
template <class Kind>
using Scattering = Rgb (*)(const Kind&, const Direction&, const Direction&);
template <class Kind>
using Drawing = std::optional<Scattered> (*)(const Kind&, const Direction&, const Numbers4&);
template <class Kind>
using Density = double (*)(const Kind&, const Direction&, const Direction&);

template <class Kind>
constexpr bool has_its_verbs() {
  static_assert(
      requires { static_cast<Drawing<Kind>>(&draw_scattering); },
      "the material `Kind` has no draw_scattering of its own");
  if constexpr (!OneOf<Kind, ClearPane, Dielectric>) {  // these spread nothing
    static_assert(
        requires { static_cast<Scattering<Kind>>(&scattering_cosine_per_sr); },
        "the material `Kind` has no scattering_cosine_per_sr of its own");
    static_assert(
        requires { static_cast<Density<Kind>>(&density_of_scattering_per_sr); },
        "the material `Kind` has no density_of_scattering_per_sr of its own");
  }
  return true;
}

template <class... Kinds>
constexpr bool have_their_verbs(std::type_identity<std::variant<Kinds...>>) {
  return (has_its_verbs<Kinds>() && ...);
}
static_assert(have_their_verbs(std::type_identity<Material>{}));

}  // namespace

Rgb scattering_cosine_per_sr(const Material& material, const Direction& to_viewer,
                             const Direction& to_source) {
  return answer(material, Cases{[](const OneOf<ClearPane, Dielectric> auto&) { return grey(0.0); },
                                [&](const auto& kind) {
                                  return scattering_cosine_per_sr(kind, to_viewer, to_source);
                                }});
}

std::optional<Scattered> draw_scattering(const Material& material, const Direction& to_viewer,
                                         const Numbers4& u) {
  return answer(material, [&](const auto& kind) { return draw_scattering(kind, to_viewer, u); });
}

double density_of_scattering_per_sr(const Material& material, const Direction& to_viewer,
                                    const Direction& to_source) {
  return answer(material, Cases{[](const OneOf<ClearPane, Dielectric> auto&) { return 0.0; },
                                [&](const auto& kind) {
                                  return density_of_scattering_per_sr(kind, to_viewer, to_source);
                                }});
}

Rgb albedo(const Material& material, const Direction& to_viewer) {
  return answer(
      material,
      Cases{[](const Matte& matte) { return matte.albedo; },
            [](const Foil& foil) { return foil.reflectance; },
            [](const ThinCloth& cloth) { return Rgb(cloth.reflectance + cloth.diffuse + cloth.direct); },
            [](const Dielectric&) { return grey(1.0); },
            [&](const OneOf<Glazed, Underglaze> auto& kind) { return albedo(kind, to_viewer); },
            [&](const ClearPane& pane) {
              const PaneShares shares = pane_shares(pane, std::abs(to_viewer.z()));
              return grey(shares.transmitted + shares.mirrored);
            }});
}

Rgb mirrored_share(const Material& material, const Direction& to_viewer) {
  const double cosine = std::abs(to_viewer.z());
  return answer(material,
                Cases{[](const Foil& foil) { return Rgb(foil.reflectance * foil.specular_share); },
                      [&](const Glazed& glazed) { return grey(glazed.coat.mirrored(cosine)); },
                      [&](const ClearPane& pane) { return grey(pane_shares(pane, cosine).mirrored); },
                      [&](const Dielectric& face) {
                        const double near = medium_toward(face, to_viewer.z()).index,
                                     far = medium_toward(face, -to_viewer.z()).index;
                        return grey(face_reflectance(far / near, cosine));
                      },
                      [](const OneOf<Matte, ThinCloth, Underglaze> auto&) { return grey(0.0); }});
}

bool scatters_widely(const Material& material) {
  return answer(material, Cases{[](const OneOf<ClearPane, Dielectric, Glazed> auto&) { return false; },
                                [](const Foil& foil) { return foil.specular_share <= 0.0; },
                                [](const OneOf<Matte, ThinCloth, Underglaze> auto&) { return true; }});
}

std::optional<Material> wide_part(const Material& material) {
  using Part = std::optional<Material>;
  return answer(material, Cases{[](const OneOf<ClearPane, Dielectric> auto&) { return Part{}; },
                                [](const Foil& foil) {
                                  return foil.specular_share < 1.0
                                             ? Part{Matte{foil.reflectance * (1.0 - foil.specular_share)}}
                                             : Part{};
                                },
                                [](const ThinCloth& cloth) {
                                  return Part{ThinCloth{grey(0.0), cloth.diffuse, cloth.reflectance}};
                                },
                                [](const Glazed& glazed) {
                                  return glazed.body.maxCoeff() > 0.0 ? Part{Underglaze{glazed}} : Part{};
                                },
                                [](const OneOf<Matte, Underglaze> auto& wide) { return Part{wide}; }});
}

std::optional<Material> narrow_part(const Material& material) {
  using Part = std::optional<Material>;
  return answer(material,
                Cases{[](const OneOf<ClearPane, Dielectric> auto& clear) { return Part{clear}; },
                      [](const Foil& foil) {
                        return foil.specular_share > 0.0
                                   ? Part{Foil{foil.reflectance * foil.specular_share, 1.0, foil.roughness}}
                                   : Part{};
                      },
                      [](const ThinCloth& cloth) {
                        return cloth.direct.maxCoeff() > 0.0 ? Part{ThinCloth{cloth.direct}} : Part{};
                      },
                      [](const Glazed& glazed) {
                        return Part{Glazed{grey(0.0), glazed.coat}};
                      },
                      [](const OneOf<Matte, Underglaze> auto&) { return Part{}; }});
}

bool has_lobe(const Material& material) {
  return answer(
      material,
      Cases{[](const Foil& foil) { return foil.specular_share > 0.0 && foil.roughness > 0.0; },
            [](const Glazed& glazed) { return !glazed.coat.smooth(); },
            [](const OneOf<Matte, ThinCloth, ClearPane, Underglaze, Dielectric> auto&) { return false; }});
}

bool is_clear(const Material& material) {
  return answer(material,
                Cases{[](const OneOf<ClearPane, Dielectric> auto&) { return true; },
                      [](const OneOf<Matte, Foil, ThinCloth, Glazed, Underglaze> auto&) { return false; }});
}

const Medium* medium_toward(const Material& material, double local_z) {
  const auto* face = std::get_if<Dielectric>(&material);
  return face ? &medium_toward(*face, local_z) : nullptr;
}

bool lets_light_through(const Material& material) {
  return answer(material, Cases{[](const OneOf<ThinCloth, ClearPane, Dielectric> auto&) { return true; },
                                [](const OneOf<Matte, Foil, Glazed, Underglaze> auto&) { return false; }});
}

Rgb straight_transmittance(const Material& material, double cosine) {
  return answer(material,
                Cases{[](const ThinCloth& cloth) { return cloth.direct; },
                      [&](const ClearPane& pane) { return grey(pane_shares(pane, cosine).transmitted); },
                      [&](const Dielectric& face) { return grey(passed_straight(face, cosine)); },
                      [](const OneOf<Matte, Foil, Glazed, Underglaze> auto&) { return grey(0.0); }});
}

}  // namespace fillside
