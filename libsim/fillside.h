// Everything the library offers, floor by floor: each floor uses only itself and those above it in this list.
#pragma once

// base: numbers and words that everything else is said in
#include "libsim/base/cases.h"           // one lambda per alternative of a closed variant
#include "libsim/base/clock.h"           // clock positions around the dish
#include "libsim/base/colour.h"          // linear colour, luminance, display code values
#include "libsim/base/deflated.h"        // bytes made fewer without loss; the only door to zlib
#include "libsim/base/estimate.h"        // a figure with its error bar
#include "libsim/base/gauss_legendre.h"  // Gauss-Legendre quadrature between two ends
#include "libsim/base/instant.h"         // A moment as a clock on the wall shows it, with its offset
#include "libsim/base/limits.h"          // how much of everything an input may hold
#include "libsim/base/parallel.h"        // a loop on several threads, same bytes for any number
#include "libsim/base/polyline.h"        // A line of straight pieces through given points
#include "libsim/base/problem.h"         // what is wrong with an input, where, and the remedy
#include "libsim/base/quantity.h"        // lengths, angles, lux and so on, read from and written as text
#include "libsim/base/sample_numbers.h"  // low-discrepancy numbers by address
#include "libsim/base/space.h"           // points, directions, frames, rays
#include "libsim/base/unit_symbols.h"    // the units that each kind of quantity may be written in
#include "libsim/base/warp.h"            // from the unit square to shapes and directions, with densities

// geometry: shapes, and where rays meet them
#include "libsim/geometry/cell_noise.h"    // cells around scattered points
#include "libsim/geometry/citrus_wheel.h"  // what a cut citrus fruit shows
#include "libsim/geometry/convex_hull.h"   // the outline of a cloud of points in a plane
#include "libsim/geometry/crossing.h"      // do flat sheets cut through each other, or through the skin of a
#include "libsim/geometry/cut.h"       // A mesh cut along a level plane, as a glass is by the surface of what
#include "libsim/geometry/cutlery.h"   // what spoons and forks share
#include "libsim/geometry/dealt.h"     // numbers dealt by a seed, for things that differ from piece to piece
#include "libsim/geometry/dumpling.h"  // one pleated dumpling, for plates of them
#include "libsim/geometry/fewer_triangles.h"  // a mesh with fewer triangles, for drawing
#include "libsim/geometry/heap.h"             // A heap of balls, poured one after the other
#include "libsim/geometry/inside.h"           // is a point inside a closed mesh?
#include "libsim/geometry/item.h"             // stand-ins for food and crockery
#include "libsim/geometry/item_forms.h"       // the forms behind make_item, one source file each
#include "libsim/geometry/jar.h"    // the glass and the lid of a jar, for jars with different things in them
#include "libsim/geometry/lathe.h"  // surfaces of revolution
#include "libsim/geometry/leaf.h"   // A thin, curled leaf with its ribs
#include "libsim/geometry/lump.h"   // rounded lumps
#include "libsim/geometry/mesh.h"   // triangle meshes and their measures
#include "libsim/geometry/nearness.h"      // how near a point is to a mesh
#include "libsim/geometry/obj_faces.h"     // the faces of an OBJ file on their way to meshes
#include "libsim/geometry/obj_mesh.h"      // own models from OBJ files
#include "libsim/geometry/obj_numbers.h"   // numbers and indices of an OBJ file, read strictly
#include "libsim/geometry/obj_scan.h"      // A strict first reading of an OBJ text
#include "libsim/geometry/obj_words.h"     // the words of an OBJ text, a logical line at a time, each with
#include "libsim/geometry/panels.h"        // flat things made of rectangles
#include "libsim/geometry/polygon.h"       // polygons in space to triangles
#include "libsim/geometry/ray_caster.h"    // where a ray meets the set
#include "libsim/geometry/rectangle.h"     // A flat rectangle in space
#include "libsim/geometry/relief.h"        // bumps
#include "libsim/geometry/round_shapes.h"  // balls and discs as lamps have them
#include "libsim/geometry/scatter.h"       // places strewn over a round surface, none close to another
#include "libsim/geometry/seams.h"         // whether and where a mesh is open
#include "libsim/geometry/seen_disc.h"     // the front of a disc as seen from a point
#include "libsim/geometry/seen_sphere.h"   // A ball as seen from a point
#include "libsim/geometry/slab.h"          // A bent sheet with a thickness
#include "libsim/geometry/spherical_rectangle.h"  // A rectangle as seen from a point
#include "libsim/geometry/strand.h"               // A round strand along a line in space
#include "libsim/geometry/tumbler.h"              // the measures of a tumbler, for what is put into one

// light: what shines
#include "libsim/light/availability.h"      // how much light the sun and the sky usually give
#include "libsim/light/chromaticity.h"      // colour of light apart from its strength
#include "libsim/light/colour_matching.h"   // how the eye's three sums weigh wavelengths
#include "libsim/light/daylight.h"          // sky, sun and the ground that they light, as one
#include "libsim/light/daylight_by_hour.h"  // daylight of one kind of weather at any hour of the year
#include "libsim/light/daylight_colour.h"   // the usual colour of each kind of sky and of the sun
#include "libsim/light/general_sky.h"       // the skies of the CIE standard general sky
#include "libsim/light/horizon.h"           // height above the horizon and compass bearing
#include "libsim/light/lamp.h"              // lamps
#include "libsim/light/lit_skyline.h"       // how bright the skyline is
#include "libsim/light/outside.h"           // what is seen through a window
#include "libsim/light/patched_outside.h"   // the outside as daylight coefficients want it
#include "libsim/light/sky_integral.h"      // illuminance by a luminance given over the upper half of
#include "libsim/light/sky_patches.h"       // the outside cut into patches
#include "libsim/light/skyline.h"           // what stands before the sky
#include "libsim/light/sun.h"               // the sun as a light: a disc half a degree across
#include "libsim/light/sun_day.h"           // when the sun rises, stands highest and sets
#include "libsim/light/sun_position.h"      // where the sun stands, by place and time
#include "libsim/light/tint.h"              // the part of a light's colour that its temperature does not tell

// matter: what surfaces do with light
#include "libsim/matter/catalogue.h"    // named surfaces, cloths and stock sheets, each with where its
#include "libsim/matter/clear_pane.h"   // clear flat glass
#include "libsim/matter/coat.h"         // A clear coat
#include "libsim/matter/dielectric.h"   // A smooth face between two clear media
#include "libsim/matter/foil.h"         // foil and mirror
#include "libsim/matter/fresnel.h"      // what a smooth face between two clear media mirrors
#include "libsim/matter/glazed.h"       // glazed
#include "libsim/matter/lobe.h"         // the lobe of rough metal
#include "libsim/matter/lobe_energy.h"  // how much of its light the lobe of rough metal loses
#include "libsim/matter/material.h"     // the closed list of materials and their verbs
#include "libsim/matter/matte.h"        // matte
#include "libsim/matter/pattern.h"  // A picture of a surface: wood grain, a printed backdrop, a tiled wall
#include "libsim/matter/picture_file.h"  // pictures of surfaces from PNG and JPEG files
#include "libsim/matter/png_head.h"      // what a PNG says of itself before it is unpacked
#include "libsim/matter/scattering.h"    // one drawn scattering event
#include "libsim/matter/thin_cloth.h"    // thin cloth or paper

// scene: the set: as written, checked, built
#include "libsim/scene/anchor_check.h"      // an anchor must say one reading, whole, at a meter that is there
#include "libsim/scene/build.h"             // from a checked description to the set that rays meet
#include "libsim/scene/camera_check.h"      // what the numbers of the camera alone cannot say
#include "libsim/scene/canonical.h"         // A description written back as a scene file
#include "libsim/scene/check.h"             // what a description must satisfy beyond its keys, as far as
#include "libsim/scene/claim_check.h"       // checks of claims
#include "libsim/scene/daylight.h"          // from [daylight] as written to what is outside the window
#include "libsim/scene/describe.h"          // from what the file said to a Description, through the field
#include "libsim/scene/description.h"       // a set as written down, and its field tables
#include "libsim/scene/edit.h"              // `--set board.fill.distance=30cm`: changes the source tree
#include "libsim/scene/fault_list.h"        // where the checks put what they find
#include "libsim/scene/finish.h"            // from a finish as written (catalogue name, own reflectance, own
#include "libsim/scene/footing_check.h"     // does everything stand on something?
#include "libsim/scene/instrument_check.h"  // can the camera and the meters be where they are said to be?
#include "libsim/scene/item_finish.h"       // what each part of a stand-in is made of, unless its owner says
#include "libsim/scene/item_overlap.h"      // how deep food and crockery stand in each other, by simple hulls
#include "libsim/scene/item_placing.h"      // where food, crockery and meshes stand, and on what
#include "libsim/scene/lamp_check.h"        // checks of lamps
#include "libsim/scene/lamp_heat.h"         // which lamps that are on stand near something that is not made
#include "libsim/scene/lamp_placing.h"      // where a lamp stands or hangs, how it is turned, and how
#include "libsim/scene/lesson.h"            // the set as a lesson
#include "libsim/scene/limits.h"            // long lists of problems, cut to what a person reads
#include "libsim/scene/load.h"              // the way from a scene file to a description that may be built
#include "libsim/scene/made_once.h"      // stand-ins and pictures that the variants of a scene have in common
#include "libsim/scene/meter_names.h"    // every meter of a set by name
#include "libsim/scene/numeric_keys.h"   // every number of a set, found by the field tables
#include "libsim/scene/opening.h"        // A window
#include "libsim/scene/passage_check.h"  // do things go through each other?
#include "libsim/scene/pictures.h"      // pictures that a scene names for its surfaces: looked for by check()
#include "libsim/scene/placed_check.h"  // checks of where things come to stand in space
#include "libsim/scene/placed_set.h"    // everything of a description that stands somewhere, placed
#include "libsim/scene/placing.h"       // from a photographer's words (clock, distance, lean) to places
#include "libsim/scene/poured.h"        // A clear liquid in glass, porcelain or a jar
#include "libsim/scene/print.h"       // A picture on a surface, and where on it each of the surface's places
#include "libsim/scene/room_check.h"  // checks of the room as a box
#include "libsim/scene/room_fit_check.h"  // does everything stand inside the room, and nothing in the table
#include "libsim/scene/scene.h"           // the set as built
#include "libsim/scene/second_print.h"    // A second surface on a part, as flour lies on a crust
#include "libsim/scene/sections.h"        // the headings of a scene file, once
#include "libsim/scene/set_size.h"        // what a set has taken in, against what it may hold
#include "libsim/scene/source_text.h"     // what must hold of a scene's text before the TOML library may
#include "libsim/scene/source_tree.h"     // what a scene file said, before anything is made of it
#include "libsim/scene/spelt_out.h"       // A set with what it leaves out said in numbers
#include "libsim/scene/spot_check.h"      // checks of where things are said to be and what they refer to by
#include "libsim/scene/surface_check.h"   // checks of what things are made of
#include "libsim/scene/things.h"          // the things of a scene that may stand more than once (windows
#include "libsim/scene/toml_reader.h"     // the only door to the TOML library
#include "libsim/scene/usual_meters.h"    // the meters that every set has
#include "libsim/scene/value_reader.h"    // one value of the source tree as the type a description wants
#include "libsim/scene/value_writer.h"    // how each member type is written in a scene
#include "libsim/scene/wording.h"         // how messages quote what a person wrote, list what may be

// sensor: the instruments
#include "libsim/sensor/camera.h"       // A camera
#include "libsim/sensor/clear_way.h"    // how far a line goes before it meets something solid
#include "libsim/sensor/dials.h"        // the numbers engraved on cameras, a third of a stop apart, and what
#include "libsim/sensor/frame_grid.h"   // an even grid of rays over a camera's frame, through the middle of
#include "libsim/sensor/framing.h"      // what is in the picture, and where the camera has to be for that
#include "libsim/sensor/instruments.h"  // the instruments that a description asks for, and those that are
#include "libsim/sensor/lens.h"         // the thin lens in figures
#include "libsim/sensor/lit_share.h"    // how much of what the camera sees of a thing lies in a source's
#include "libsim/sensor/map_plane.h"    // A grid of flat receptors over a rectangle
#include "libsim/sensor/meter.h"        // A light meter
#include "libsim/sensor/patch.h"        // A patch of the subject's own skin
#include "libsim/sensor/receiver.h"     // the place where light is received, and how much each direction
#include "libsim/sensor/seen_things.h"  // what the camera sees of each thing, with what stands before it
#include "libsim/sensor/sensor_format.h"  // sensors by size

// transport: the journey of the light
#include "libsim/transport/attribution.h"    // the ledger of one receiver
#include "libsim/transport/camera_path.h"    // from the lens to the first surface that scatters widely
#include "libsim/transport/coarse_grid.h"    // light that comes by way of the room changes slowly over a
#include "libsim/transport/coefficients.h"   // daylight coefficients
#include "libsim/transport/gather.h"         // all light at one receiver from one sample, partitioned, not
#include "libsim/transport/kept_light.h"     // the cached mode's store
#include "libsim/transport/key.h"            // the key
#include "libsim/transport/means.h"          // the innermost loop of every measurement
#include "libsim/transport/measure.h"        // measuring
#include "libsim/transport/measured_size.h"  // memory that the light of a map or picture takes
#include "libsim/transport/measurement.h"    // what an instrument read
#include "libsim/transport/mirror_image.h"   // what a ray from the lens sees of windows and lamps by one
#include "libsim/transport/openings.h"       // windows and lamps as seen from a point
#include "libsim/transport/parts.h"          // the integrals into which the light at a receiver is divided
#include "libsim/transport/runs_in.h"  // the medium that a path runs in, as far as the faces it meets tell
#include "libsim/transport/source_rows.h"    // under which row the light of a window or lamp is written down
#include "libsim/transport/sunbeam.h"        // the sun's straight way to a place in the set
#include "libsim/transport/surface_cells.h"  // the matte surfaces of a set divided into small cells, for
#include "libsim/transport/walk.h"           // one light sample followed backwards

// view: what a reading says
#include "libsim/view/anchor.h"          // one real reading that a whole set is scaled to
#include "libsim/view/averaged.h"        // A map with its grain rubbed out, for lines that should not
#include "libsim/view/cast.h"            // colour casts
#include "libsim/view/clipping.h"        // how bright a thing may be before the sensor is full
#include "libsim/view/colour_scale.h"    // the colours of maps, made for this project
#include "libsim/view/contours.h"        // contour lines of a map, joined into polylines, at the levels of
#include "libsim/view/developed.h"       // from scene-linear light to a picture for the screen
#include "libsim/view/edge_field.h"      // how wide the shadow edges of a mapped plane are, cell by cell
#include "libsim/view/exposure.h"        // exposure from light
#include "libsim/view/glare.h"           // glare
#include "libsim/view/lattice.h"         // the grid of a map's values with one more ring on the
#include "libsim/view/levels.h"          // the round values of a scale
#include "libsim/view/light_layers.h"    // a picture taken apart by light
#include "libsim/view/map.h"             // A figure spread over a plane
#include "libsim/view/map_difference.h"  // one map less another
#include "libsim/view/map_figures.h"     // the maps
#include "libsim/view/map_value.h"       // reading a map between its cell centres
#include "libsim/view/motion.h"          // what moves while the shutter is open is drawn out over the picture
#include "libsim/view/oklab.h"           // OKLab
#include "libsim/view/parted_light.h"    // a picture by where its light comes from and what turned it last
#include "libsim/view/picture.h"         // A finished picture
#include "libsim/view/reading.h"         // what a meter or patch says
#include "libsim/view/round_numbers.h"   // round numbers as people choose them, and how they are written
#include "libsim/view/set_model.h"       // the set as shapes to turn and look at
#include "libsim/view/set_outline.h"     // the set seen from above, to draw into maps of level planes
#include "libsim/view/set_view.h"        // the set as a draughtsman sees it, with the measures that a builder
#include "libsim/view/softness.h"        // how soft a shadow's edge is
#include "libsim/view/starting_point.h"  // which settings to start with, and which others give the same
#include "libsim/view/stops_between.h"   // how many stops lie between two lights
#include "libsim/view/texture.h"         // what the light makes of small relief
#include "libsim/view/tones.h"           // where the tones of a picture lie

// what_if: what would be, and whether it is so
#include "libsim/what_if/anchored.h"        // scaling what was measured to the description's anchor
#include "libsim/what_if/audit.h"           // how far the cached mode is off
#include "libsim/what_if/calendar.h"        // when the light at a table is good
#include "libsim/what_if/card_key.h"        // a section of a scene as a flat list of keys with their values
#include "libsim/what_if/card_reader.h"     // a set card read back
#include "libsim/what_if/card_remarks.h"    // what follows from a card's measures and helps the hand
#include "libsim/what_if/card_sentence.h"   // the fixed words of a set card, once
#include "libsim/what_if/check_families.h"  // the families of light checks
#include "libsim/what_if/checked_set.h"     // bare sets with known answers
#include "libsim/what_if/claims.h"          // claims
#include "libsim/what_if/comparison.h"      // what differs between two sets that were read side by side
#include "libsim/what_if/cut_list.h"        // the boards of a set cut out of the sheets that shops sell
#include "libsim/what_if/cut_words.h"       // a cut list in words
#include "libsim/what_if/daylit_set.h"      // A set measured once by daylight coefficients and read under any
#include "libsim/what_if/dish_figures.h"    // what concerns the dish as a whole
#include "libsim/what_if/effort.h"          // how well and how long to measure
#include "libsim/what_if/expected_readings.h"  // what a person should read in the set once it stands
#include "libsim/what_if/exposure_plan.h"      // what a photographer sets the camera to, for a set that has
#include "libsim/what_if/figure_names.h"       // figures of a set by name, for claims
#include "libsim/what_if/fixed_exposure.h"     // one exposure for several pictures
#include "libsim/what_if/freedom.h"            // what may be moved or chosen
#include "libsim/what_if/glare_moves.h"        // which way to move to lose a mirror image
#include "libsim/what_if/glare_reading.h"      // every window and lamp that the camera sees mirrored
#include "libsim/what_if/guillotine.h"    // rectangles out of sheets with straight cuts from edge to edge
#include "libsim/what_if/image_search.h"  // looking for mirror images
#include "libsim/what_if/input_uncertainty.h"  // how far each number of a set may be off
#include "libsim/what_if/light_checks.h"       // does this copy compute light as the books have it
#include "libsim/what_if/light_field.h"        // the light at a point as a whole
#include "libsim/what_if/map_reading.h"        // A plane measured to a wanted precision, for any of its maps
#include "libsim/what_if/named_section.h"      // from the name that results use for a thing back to its
#include "libsim/what_if/obstacles.h"          // what stands where it may not
#include "libsim/what_if/optimum_search.h"     // the largest value of a function of a few shares
#include "libsim/what_if/packed_boxes.h"  // every box that every choice out of a few pieces can be packed
#include "libsim/what_if/paired_sets.h"   // two sets read with the same sample numbers for the sake of what
#include "libsim/what_if/part_reading.h"  // one instrument read part by part
#include "libsim/what_if/picture_reading.h"     // A picture measured to a wanted precision, by rows, with the
#include "libsim/what_if/place.h"               // place
#include "libsim/what_if/remarks_on_camera.h"   // can the camera stand and focus there?
#include "libsim/what_if/remarks_on_light.h"    // does light arrive, does the sun fall on something that
#include "libsim/what_if/remarks_on_picture.h"  // is in the picture what should be, and nothing else?
#include "libsim/what_if/remarks_on_shading.h"  // does something stand in the key's way to the dish
#include "libsim/what_if/remarks_on_standing.h"  // does everything stand on something?
#include "libsim/what_if/sensitivity.h"          // which number of a set its figures hang on
#include "libsim/what_if/series.h"    // one set with one or two of its keys taken through several values
#include "libsim/what_if/set_card.h"  // what a second person needs to build a set
#include "libsim/what_if/set_instruments.h"    // the instruments that a set is read with
#include "libsim/what_if/set_reading.h"        // all meters and patches of a set, read to a wanted precision
#include "libsim/what_if/set_remarks.h"        // A look over the set before the light is measured, as an
#include "libsim/what_if/shadow_edge.h"        // the shadow that a thing casts on the table
#include "libsim/what_if/shared_instrument.h"  // one instrument that stands in several sets
#include "libsim/what_if/shared_reading.h"     // several sets read side by side
#include "libsim/what_if/sun_on_dish.h"        // where the sun comes to lie on the table
#include "libsim/what_if/trial_set.h"      // one set tried after another with other values of its free keys
#include "libsim/what_if/want.h"           // what a set shall read
#include "libsim/what_if/white_balance.h"  // what a set's picture takes for white
#include "libsim/what_if/white_steps.h"    // white set a little warmer or cooler

// writers: the paper it is written on
#include "libsim/writers/atomic_file.h"      // files that are either there whole or not there
#include "libsim/writers/contour_numbers.h"  // where the numbers of contour lines stand
#include "libsim/writers/csv.h"              // comma-separated values for spreadsheets
#include "libsim/writers/curve_sheet.h"      // figures against what was varied
#include "libsim/writers/cut_sheet.h"        // the sheets to buy with the boards that are cut from them
#include "libsim/writers/day_sheet.h"        // one day at a meter as a page
#include "libsim/writers/dimension_line.h"   // A measure as draughtsmen write it
#include "libsim/writers/drawing.h"          // A sheet to draw on
#include "libsim/writers/exr.h"              // openEXR files
#include "libsim/writers/grid_sheet.h"       // one figure over two things that were varied
#include "libsim/writers/hour_axis.h"        // words and marks that the sheets of the calendar share
#include "libsim/writers/html.h"             // text and bytes as a page can carry them
#include "libsim/writers/lesson_page.h"      // A page of a lesson on A4: what to predict, what came of it
#include "libsim/writers/map_axes.h"         // the frame of a map with ticks in cm on all sides, numbers and
#include "libsim/writers/map_contours.h"     // contour lines on a map
#include "libsim/writers/map_field.h"        // the map's values as a picture in the colours of its scale
#include "libsim/writers/map_layout.h"       // where the parts of a map sheet stand
#include "libsim/writers/map_legend.h"    // what the colours mean, what the hatch means, and how long a few
#include "libsim/writers/map_sheet.h"     // A map as a page to pin on the wall
#include "libsim/writers/map_strips.h"    // things beyond a map's edge (the window, as a rule)
#include "libsim/writers/map_things.h"    // what stands on the mapped plane
#include "libsim/writers/metadata.h"      // what every written picture carries so that it can be made again
#include "libsim/writers/packed_light.h"  // a linear picture packed for a page
#include "libsim/writers/page.h"          // a report as one page for the browser
#include "libsim/writers/page_assets.h"   // the page's style and scripts
#include "libsim/writers/page_blocks.h"   // the HTML of each kind of block
#include "libsim/writers/page_drawing.h"  // small pieces of SVG for the page
#include "libsim/writers/palette.h"       // the paper and inks of every sheet this library draws
#include "libsim/writers/paragraph.h"     // texts of several lines, broken where the sheet ends
#include "libsim/writers/picture_scaling.h"  // pictures made smaller or larger
#include "libsim/writers/picture_sheet.h"    // pictures as they are shown
#include "libsim/writers/plain_table.h"      // A table for the terminal
#include "libsim/writers/plan_sheet.h"       // A set from above and from two sides, to scale on A4
#include "libsim/writers/png.h"              // PNG files
#include "libsim/writers/printed_page.h"     // A page that is drawn once and written as what is wanted
#include "libsim/writers/scale_bar.h"        // A bar that is a round number of centimetres long
#include "libsim/writers/sheet_space.h"      // places on a sheet, in pixels
#include "libsim/writers/view_drawing.h"     // one view of a set, to scale
#include "libsim/writers/year_sheet.h"       // A year at one meter as a page
