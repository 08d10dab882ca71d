const drawn = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'text-anchor',
  'paint-order',
  'opacity',
  'display',
] as const;

/**
 * A drawing of the page as a file that stands alone: every style written out, the patterns it uses inside, the page's
 * ground behind it. Links are left out, since the file leaves the register.
 */
export function standaloneSvg(svg: SVGSVGElement, title: string): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  writeStyles(svg, copy);
  const namespace = 'http://www.w3.org/2000/svg';
  copy.setAttribute('xmlns', namespace);
  copy.removeAttribute('class');
  copy.removeAttribute('role');
  const defs = document.createElementNS(namespace, 'defs');
  for (const id of usedPatterns(copy)) {
    const pattern = document.querySelector<SVGPatternElement>(`#${CSS.escape(id)}`);
    if (!pattern) continue;
    const kept = pattern.cloneNode(true) as SVGElement;
    writeStyles(pattern, kept);
    defs.append(kept);
  }
  const ground = document.createElementNS(namespace, 'rect');
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', getComputedStyle(document.documentElement).backgroundColor);
  const name = document.createElementNS(namespace, 'title');
  name.textContent = title;
  copy.prepend(name, defs, ground);
  for (const link of [...copy.querySelectorAll('a')]) {
    const group = document.createElementNS(namespace, 'g');
    group.style.cssText = link.style.cssText;
    group.append(...link.childNodes);
    link.replaceWith(group);
  }
  return new XMLSerializer().serializeToString(copy);
}

function writeStyles(from: SVGElement, to: SVGElement): void {
  const originals = [from, ...from.querySelectorAll<SVGElement>('*')];
  const copies = [to, ...to.querySelectorAll<SVGElement>('*')];
  originals.forEach((original, index) => {
    const copy = copies[index];
    if (!copy) return;
    const style = getComputedStyle(original);
    // through the style object: the page's policy allows no style attributes
    for (const name of drawn) copy.style.setProperty(name, style.getPropertyValue(name));
    for (const name of [...copy.getAttributeNames()])
      if (
        name === 'class' ||
        name === 'tabindex' ||
        name.startsWith('data-') ||
        copy.getAttribute(name)?.includes('var(')
      )
        copy.removeAttribute(name);
  });
}

function usedPatterns(svg: Element): Set<string> {
  const ids = new Set<string>();
  for (const element of svg.querySelectorAll('*'))
    for (const match of (element.getAttribute('style') ?? '').matchAll(/url\("?#([\w-]+)"?\)/g))
      ids.add(match[1] ?? '');
  return ids;
}

/** Hands a text to the reader as a file. */
export function offerFile(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
