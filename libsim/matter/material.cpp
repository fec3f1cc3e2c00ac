#include "libsim/matter/material.h"

#include <cmath>

#include "libsim/base/cases.h"
#include "libsim/matter/fresnel.h"

namespace fillside {

Rgb scattering_cosine_per_sr(const Material& material, const Direction& to_viewer,
                             const Direction& to_source) {
  return std::visit(
      Cases{[](const ClearPane&) { return grey(0.0); }, [](const Dielectric&) { return grey(0.0); },
            [&](const auto& kind) { return scattering_cosine_per_sr(kind, to_viewer, to_source); }},
      material);
}

std::optional<Scattered> draw_scattering(const Material& material, const Direction& to_viewer,
                                         const Numbers4& u) {
  return std::visit([&](const auto& kind) { return draw_scattering(kind, to_viewer, u); }, material);
}

double density_of_scattering_per_sr(const Material& material, const Direction& to_viewer,
                                    const Direction& to_source) {
  return std::visit(
      Cases{[](const ClearPane&) { return 0.0; }, [](const Dielectric&) { return 0.0; },
            [&](const auto& kind) { return density_of_scattering_per_sr(kind, to_viewer, to_source); }},
      material);
}

Rgb albedo(const Material& material, const Direction& to_viewer) {
  return std::visit(
      Cases{[](const Matte& matte) { return matte.albedo; },
            [](const Foil& foil) { return foil.reflectance; },
            [](const ThinCloth& cloth) { return Rgb(cloth.reflectance + cloth.diffuse + cloth.direct); },
            [](const Dielectric&) { return grey(1.0); },
            [&](const Glazed& glazed) { return albedo(glazed, to_viewer); },
            [&](const Underglaze& under) { return albedo(under, to_viewer); },
            [&](const ClearPane& pane) {
              const PaneShares shares = pane_shares(pane, std::abs(to_viewer.z()));
              return grey(shares.transmitted + shares.mirrored);
            }},
      material);
}

Rgb mirrored_share(const Material& material, const Direction& to_viewer) {
  const double cosine = std::abs(to_viewer.z());
  return std::visit(Cases{[](const Foil& foil) { return Rgb(foil.reflectance * foil.specular_share); },
                          [&](const Glazed& glazed) { return grey(glazed.coat.mirrored(cosine)); },
                          [&](const ClearPane& pane) { return grey(pane_shares(pane, cosine).mirrored); },
                          [&](const Dielectric& face) {
                            const double near = medium_toward(face, to_viewer.z()).index,
                                         far = medium_toward(face, -to_viewer.z()).index;
                            return grey(face_reflectance(far / near, cosine));
                          },
                          [](const auto&) { return grey(0.0); }},
                    material);
}

bool scatters_widely(const Material& material) {
  return std::visit(
      Cases{[](const ClearPane&) { return false; }, [](const Dielectric&) { return false; },
            [](const Glazed&) { return false; }, [](const Foil& foil) { return foil.specular_share <= 0.0; },
            [](const auto&) { return true; }},
      material);
}

std::optional<Material> wide_part(const Material& material) {
  using Part = std::optional<Material>;
  return std::visit(Cases{[](const ClearPane&) { return Part{}; }, [](const Dielectric&) { return Part{}; },
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
                          [](const auto& wide) { return Part{wide}; }},
                    material);
}

std::optional<Material> narrow_part(const Material& material) {
  using Part = std::optional<Material>;
  return std::visit(
      Cases{[](const ClearPane& pane) { return Part{pane}; },
            [](const Dielectric& face) { return Part{face}; },
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
            [](const auto&) { return Part{}; }},
      material);
}

bool has_lobe(const Material& material) {
  return std::visit(
      Cases{[](const Foil& foil) { return foil.specular_share > 0.0 && foil.roughness > 0.0; },
            [](const Glazed& glazed) { return !glazed.coat.smooth(); }, [](const auto&) { return false; }},
      material);
}

bool is_clear(const Material& material) {
  return std::holds_alternative<ClearPane>(material) || std::holds_alternative<Dielectric>(material);
}

const Medium* medium_toward(const Material& material, double local_z) {
  const auto* face = std::get_if<Dielectric>(&material);
  return face ? &medium_toward(*face, local_z) : nullptr;
}

bool lets_light_through(const Material& material) {
  return std::holds_alternative<ThinCloth>(material) || is_clear(material);
}

Rgb straight_transmittance(const Material& material, double cosine) {
  return std::visit(Cases{[](const ThinCloth& cloth) { return cloth.direct; },
                          [&](const ClearPane& pane) { return grey(pane_shares(pane, cosine).transmitted); },
                          [&](const Dielectric& face) { return grey(passed_straight(face, cosine)); },
                          [](const auto&) { return grey(0.0); }},
                    material);
}

}  // namespace fillside
