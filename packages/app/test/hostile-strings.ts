/** What would do harm where text is taken for markup, script, an address, a style, a template, a key or a path. `HIT` stands for the harm. */
const PAYLOADS: readonly string[] = [
  '<script>HIT</script>',
  '<img src=x onerror="HIT">',
  '<svg/onload=HIT>',
  '<svg><animate onbegin=HIT attributeName=x dur=1s>',
  '<iframe srcdoc="<script>parent.hit=1</script>"></iframe>',
  '<details open ontoggle=HIT>',
  '<input autofocus onfocus=HIT>',
  '<a href="javascript:HIT">a</a>',
  'javascript:HIT//',
  'data:text/html,<script>HIT</script>',
  '<link rel=stylesheet href=//hostile.invalid/a.css>',
  '<style>@import "//hostile.invalid/a.css";</style>',
  'url(//hostile.invalid/a.png)',
  '<p style="width:expression(HIT)">',
  '{{constructor.constructor("HIT")()}}',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: hostile to templates
  '${HIT}',
  '<%= HIT %>',
  '__proto__[onload]=<script>HIT</script>',
  '{"__proto__":{"hit":1},"constructor":{"prototype":{"hit":1}}}',
  '../../../../etc/passwd%00.json',
  "';HIT;//",
  '\u202egnp.exe\u2066HIT\u2069',
  '\u200b\u200d\ufeff<b onmouseover=HIT>\u0000',
  '\u0000\u0007\u001b]0;HIT\u0007',
  '<base href=//hostile.invalid/>',
]

/** Where it is put: how it breaks out of what surrounds it. */
const CONTEXTS: readonly ((payload: string) => string)[] = [
  (p) => p,
  (p) => `">${p}`,
  (p) => `'>${p}`,
  (p) => `</textarea>${p}`,
  (p) => `</title></style></script>${p}`,
  (p) => `-->${p}<!--`,
  (p) => `]]>${p}`,
  (p) => `</text></svg>${p}`,
  (p) => `<svg><foreignObject>${p}`,
  (p) => `<math><mtext>${p}`,
  (p) => p.replace(/<\/?[a-z]+|\bon[a-z]+=/g, (tag) => tag.toUpperCase()).concat('<IMG SRC=X ONERROR=HIT>'),
  (p) => [...p].map((sign) => `&#${sign.charCodeAt(0)};`).join(''),
  (p) => encodeURIComponent(p),
  (p) => [...p].map((sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`).join(''),
  (p) => `${'x'.repeat(5000)}${p}`,
  (p) => `${'\u{1f6aa}'.repeat(60)}${p}`,
  (p) => `\u202e${p}`,
  (p) => `{"name":"${p}"}`,
  (p) => `" autofocus onfocus="HIT" x="${p}`,
  (p) => `\`${p}\``,
]

/** Each payload in each context: 500. */
export const HOSTILE: readonly string[] = PAYLOADS.flatMap((payload) =>
  CONTEXTS.map((context) => context(payload).replaceAll('HIT', 'globalThis.hit=1')),
)
