// SPDX-License-Identifier: MIT
// Arrow keys go from link to link within what listens, in their order.

const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

export function walkLinks(event: KeyboardEvent): void {
  const step = steps[event.key];
  if (!step) return;
  event.preventDefault();
  const links = [...(event.currentTarget as Element).querySelectorAll<SVGAElement | HTMLAnchorElement>('a')];
  const here = links.findIndex((link) => link === document.activeElement);
  links[Math.min(Math.max(here + step, 0), links.length - 1)]?.focus();
}
