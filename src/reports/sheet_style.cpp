#include "reports/sheet_parts.hpp"

namespace cropful::reports {

std::string_view sheet_style() {
    return R"css(
:root {
  --ink: #111; --paper: #fff; --soft: #444; --rule: #8a8a8a; --faint: #d9d9d9; --shade: #f2f2f2; --line: #0a4a8f;
}
@media screen {
  :root { color-scheme: light dark; }
}
@media screen and (prefers-color-scheme: dark) {
  :root {
    --ink: #f1f1f1; --paper: #141414; --soft: #c8c8c8; --rule: #8f8f8f; --faint: #3d3d3d; --shade: #232323;
    --line: #8cc4ff;
  }
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); }
body { margin: 0 auto; padding: 1rem; max-width: 70rem; font: 1.0625rem/1.45 system-ui, sans-serif; }
h1 { margin: 0; font-size: 2rem; line-height: 1.15; }
h2 { margin: 0; font-size: 2.25rem; line-height: 1.15; }
h3 { margin: 2rem 0 0.5rem; font-size: 1.3rem; line-height: 1.25; break-after: avoid; }
h1, h2, h3, td, th, p, li, caption { overflow-wrap: break-word; }
p { margin: 0.25rem 0 0.75rem; }
a { color: var(--line); }
header ul { display: flex; flex-wrap: wrap; gap: 0.5rem 1.5rem; margin: 0; padding: 0; list-style: none; }
header a { display: inline-block; padding: 0.4rem 0; }
.running { display: none; }
.sheet { margin-top: 2.5rem; padding-top: 1.25rem; border-top: 5px solid var(--ink); }
.about, .time { color: var(--soft); }
table { width: 100%; border-collapse: collapse; }
caption { text-align: left; padding-bottom: 0.35rem; color: var(--soft); }
th, td { padding: 0.4rem 0.6rem 0.4rem 0; vertical-align: top; text-align: left; border-bottom: 1px solid var(--faint); }
thead th { border-bottom: 2px solid var(--ink); font-size: 0.95rem; vertical-align: bottom; }
tbody th { font-weight: 600; }
tfoot th, tfoot td { border-top: 2px solid var(--ink); border-bottom: 0; font-weight: 700; }
tr { break-inside: avoid; }
caption, .sources tbody th, .shopping td, .feeds tbody th { overflow-wrap: anywhere; }
.shopping th, .shopping .by, .shopping .figure { white-space: nowrap; }
.sources { margin-top: 1.5rem; font-size: 0.95rem; }
.sources tbody th { font-weight: 400; }
.source-list { padding-left: 1.8rem; font-size: 0.95rem; overflow-wrap: anywhere; }
.days { font-size: 1.15rem; }
.days .blank, .days thead th:nth-child(n + 4) { width: 3.2rem; border-left: 1px solid var(--rule); padding-left: 0.3rem; }
.days tbody th, .days td.looks { white-space: nowrap; }
.days .looks .ticks { display: block; margin: 0; }
.days thead th:nth-child(3) { width: 70%; }
.days .when, .days .air, .days .ticks { white-space: nowrap; }
.days .air { font-weight: 400; }
.days tr { border-bottom: 1px solid var(--rule); }
.days .looks { color: var(--soft); font-size: 0.95rem; }
.figure { text-align: right; font-variant-numeric: tabular-nums; }
.by { font-weight: 700; }
.tick { padding-left: 1.75em; text-indent: -1.75em; }
.box { display: inline-block; width: 1.05em; height: 1.05em; border: 2px solid var(--ink); border-radius: 2px; vertical-align: -0.15em; margin-right: 0.3em; text-indent: 0; }
.ticks { display: inline-block; margin: 0 0.6em 0.15em 0; white-space: nowrap; }
.notes { color: var(--soft); font-size: 0.95rem; margin-top: 0.5rem; }
ul { padding-left: 1.2rem; margin: 0.25rem 0 0.75rem; }
li { margin-bottom: 0.3rem; break-inside: avoid; }
.cautions { list-style: none; padding-left: 0; }
.cautions li { padding: 0.3rem 0 0.3rem 0.7rem; border-left: 5px solid var(--ink); }

.charts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr)); gap: 1.5rem 2rem; }
figure { margin: 0; min-width: 0; break-inside: avoid; }
figcaption { font-size: 0.95rem; margin-bottom: 0.4rem; }
summary { cursor: pointer; padding: 0.3rem 0; color: var(--line); }
.chart { display: block; width: 100%; height: auto; }
.chart text { font: 15px system-ui, sans-serif; fill: var(--ink); }
.chart .axis-title { font-weight: 600; }
.chart .label { font-weight: 600; fill: var(--line); }
.chart .dark { fill: var(--ink); }
.chart .end { text-anchor: end; }
.chart .middle { text-anchor: middle; }
.chart .axis { stroke: var(--ink); stroke-width: 1.5; }
.chart .grid { stroke: var(--faint); stroke-width: 1; }
.chart .line { fill: none; stroke: var(--line); stroke-width: 2.5; stroke-linejoin: round; }
.chart .dashed { stroke: var(--ink); stroke-dasharray: 7 5; }
.chart .band { fill: var(--line); fill-opacity: 0.16; stroke: none; }
.chart .edge { fill: none; stroke: var(--line); stroke-width: 1; stroke-dasharray: 2 3; }
.chart .mark { fill: var(--ink); stroke: none; }

@media screen and (max-width: 40rem) {
  body { padding: 0.75rem; }
  h2 { font-size: 1.8rem; }
  th, td { padding-right: 0.4rem; }
  table { font-size: 0.9rem; }
  .days .blank, .days thead th:nth-child(n + 4) { display: none; }
  .days td, .days th, .room td, .room th { overflow-wrap: anywhere; }
  .days .when, .days .air, .days td.looks, .days .ticks { white-space: normal; }
  .shopping th, .shopping .by, .shopping .figure { white-space: normal; }
}

@page { margin: 11mm 12mm 13mm; @bottom-right { content: counter(page); font: 9pt sans-serif; } }
@media print {
  body { padding: 0; max-width: none; font-size: 10.5pt; line-height: 1.35; }
  header, details { display: none; }
  .sheet { display: table; table-layout: fixed; width: 100%; margin: 0; padding: 0; border: 0; break-before: page; }
  .sheet:first-child { break-before: auto; }
  .page { display: table-row-group; }
  .running { display: table-header-group; break-inside: avoid; font-weight: 700; font-size: 20pt; line-height: 1.1; }
  .running span { display: inline-block; padding-bottom: 2mm; }
  .running .farm { float: right; font-weight: 400; font-size: 11pt; padding-top: 3mm; }
  h2 { display: none; }
  .about { margin: 0 0 1mm; }
  h3 { margin: 5mm 0 1.5mm; font-size: 13pt; }
  .notes, figcaption, thead th { font-size: 9.5pt; }
  th, td { padding: 1mm 2mm 1mm 0; }
  .days { font-size: 14pt; line-height: 1.1; }
  .days .blank, .days thead th:nth-child(n + 4) { width: 9.5mm; padding-left: 1mm; padding-right: 0; }
  .days thead th { font-size: 9.5pt; }
  .days th, .days td { padding-top: 0.5mm; padding-bottom: 0.5mm; }
  .days .looks { font-size: 9.5pt; line-height: 1.2; }
  .days caption { font-size: 9.5pt; }
  .signs, .watch li { font-size: 9.5pt; }
  .room { font-size: 8.5pt; }
  .room td:not(:last-child) { white-space: nowrap; }
  .watch li { margin-bottom: 0.5mm; }
  .watch .notes { font-size: 8.5pt; margin: 1mm 0; }
  .days .air { font-size: 11pt; }
  .ticks { margin-right: 0.3em; }
  .sources, .sources thead th, .source-list { font-size: 8pt; }
  .sources, .source-list { margin-top: 2mm; }
  .sources th, .sources td { padding-top: 0.4mm; padding-bottom: 0.4mm; }
  .source-list li { margin-bottom: 0.5mm; }
  .charts { grid-template-columns: 1fr 1fr; gap: 4mm 6mm; }
  thead { display: table-header-group; break-inside: avoid; }
  caption { break-after: avoid; }
  tbody tr:first-child { break-before: avoid; }
  tfoot { display: table-row-group; }
}
)css";
}

}  // namespace cropful::reports
