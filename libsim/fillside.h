// Everything the library offers, floor by floor: each floor uses only itself and those above it in this list.
#pragma once

// base: numbers and words that everything else is said in
#include "libsim/base/clock.h"           // clock positions around the dish
#include "libsim/base/colour.h"          // linear colour, luminance, display code values
#include "libsim/base/estimate.h"        // a figure with its error bar
#include "libsim/base/parallel.h"        // a loop on several threads, same bytes for any number
#include "libsim/base/problem.h"         // what is wrong with an input, where, and the remedy
#include "libsim/base/quantity.h"        // lengths, angles, lux and so on, read from and written as text
#include "libsim/base/sample_numbers.h"  // low-discrepancy numbers by address
#include "libsim/base/space.h"           // points, directions, frames, rays
#include "libsim/base/warp.h"            // from the unit square to shapes and directions, with densities

// geometry: shapes
#include "libsim/geometry/mesh.h"  // triangle meshes and their measures

// matter: what surfaces do with light
#include "libsim/matter/material.h"    // the closed list of materials and their verbs
#include "libsim/matter/scattering.h"  // one drawn scattering event

// scene: the set
#include "libsim/scene/description.h"  // a set as written down, and its field tables
