// One lambda per alternative of a closed variant: std::visit(Cases{...}, variant).
#pragma once

namespace fillside {

template <class... F>
struct Cases : F... {
  using F::operator()...;
};
template <class... F>
Cases(F...) -> Cases<F...>;

}  // namespace fillside
