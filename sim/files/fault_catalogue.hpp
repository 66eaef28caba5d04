// SPDX-License-Identifier: MIT
#pragma once
#include "faults/catalogue.hpp"
#include "files/reader.hpp"

#include <string>
#include <vector>

namespace lightoff::files {

/// The files that the catalogue is written in: parts.json, and one file for each group of faults.
struct CatalogueFiles {
    Document parts;
    std::vector<Document> faults; ///< in the order of faults::Group

    /// All of them as one canonical text, for the bundle's hash.
    [[nodiscard]] std::string canonical() const;
};

/// Parses the files in faults/ of the data folder; nothing of their content is judged yet. Throws Error.
CatalogueFiles read_catalogue_files();

/// The catalogue of one furnace: a part that the furnace lacks is left out with its faults, and nothing
/// refers to it. Throws Error, with the place in the file, for whatever can't be used and for a condition,
/// place or element that a furnace with that part does not have.
faults::Catalogue read_catalogue(const CatalogueFiles& files, const furnace::Model& model);

/// Both at once.
faults::Catalogue load_catalogue(const furnace::Model& model);

} // namespace lightoff::files
