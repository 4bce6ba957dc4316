// Drawings come as SVG text. Only elements and attributes named here get
// into the page; one that is not named takes the whole drawing with it, since
// half a drawing can mislead.

const ELEMENTS = new Set(
  'svg g path line rect circle ellipse polyline polygon text tspan title desc defs marker pattern'.split(' '),
);

const ATTRIBUTES = new Set(
  (
    'xmlns viewBox preserveAspectRatio width height role aria-label aria-labelledby aria-hidden id class ' +
    'x y x1 y1 x2 y2 cx cy r rx ry dx dy d points transform rotate ' +
    'fill fill-opacity fill-rule stroke stroke-width stroke-dasharray stroke-linecap stroke-linejoin stroke-opacity opacity ' +
    'text-anchor dominant-baseline font-size font-weight font-style font-family textLength lengthAdjust ' +
    'marker-start marker-mid marker-end markerWidth markerHeight markerUnits refX refY orient ' +
    'patternUnits patternTransform vector-effect'
  ).split(' '),
);

let count = 0;

/**
 * The drawing as an element, or null when the text is no drawing that may
 * come in.
 * @param {string} text
 * @returns {SVGSVGElement | null}
 */
export function picture(text) {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (!(root instanceof SVGSVGElement)) return null;
  const all = [root, ...root.querySelectorAll('*')];
  if (!all.every(isAllowed)) return null;
  renameIds(all, `drawing-${++count}-`);
  return document.importNode(root, true);
}

/** @param {Element} element */
function isAllowed(element) {
  return (
    element.namespaceURI === 'http://www.w3.org/2000/svg' &&
    ELEMENTS.has(element.localName) &&
    [...element.attributes].every((a) => ATTRIBUTES.has(a.name) && /^(?!.*url\((?!#))/is.test(a.value))
  );
}

/**
 * Two drawings on one page may use the same ids: put the drawing's own name
 * before each.
 * @param {Element[]} elements
 * @param {string} prefix
 */
function renameIds(elements, prefix) {
  for (const element of elements) {
    for (const a of element.attributes) {
      if (a.name === 'id') a.value = prefix + a.value;
      else if (a.name === 'aria-labelledby') a.value = a.value.replace(/\S+/g, (id) => prefix + id);
      else a.value = a.value.replaceAll('url(#', `url(#${prefix}`);
    }
  }
}
