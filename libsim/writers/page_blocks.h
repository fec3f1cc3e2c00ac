// The HTML of each kind of block; parts of page_html.
#pragma once

#include "libsim/writers/page.h"

namespace fillside {

std::string block_html(const PageText& text);
std::string block_html(const PageList& list);
std::string block_html(const PageFacts& facts);
std::string block_html(const PageTable& table);
std::string block_html(const PagePicture& picture);
std::string block_html(const PageSlider& slider);
std::string block_html(const PageBars& bars);
std::string block_html(const PageMaps& maps);
std::string block_html(const PageRelight& relight);
std::string block_html(const PageRoom& room);
std::string block_html(const PageCurves& curves);
std::string block_html(const PagePlan& plan);
std::string block_html(const PageCode& code);

/// An <img> with the picture in it.
std::string image_html(const Picture& picture, const std::string& alternative);

/// The picture is folded away where the scripts show something better: a <figure> of that kind, with its data
/// for them.
std::string live_figure(const std::string& kind, const std::string& name, const std::string& still,
                        const std::string& data, const std::string& caption);

}  // namespace fillside
