// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/html_style.h"

namespace staddle {

const char* const page_style = R"(
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; background: #fff; color: #1a1a1a;
  font: 1.125rem/1.5 Helvetica, Arial, "Liberation Sans",
  "DejaVu Sans Condensed", sans-serif; }
main { max-width: 48rem; margin: 0 auto; padding: 1.25rem; overflow-wrap: anywhere; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 .4rem; }
h2 { font-size: 1.5rem; line-height: 1.25; margin: 2.5rem 0 .6rem; padding-top: .6rem;
  border-top: 3px solid #1d7044; }
h3, .answer h2 { font-size: 1.2rem; margin: 1.2rem 0 .2rem; padding: 0; border: 0; }
p { margin: .5rem 0; }
.subject { font-size: 1.2rem; }
.people { color: #3d3d3d; }
.keys { display: flex; flex-wrap: wrap; gap: .75rem; margin: 1rem 0; padding: 0;
  list-style: none; }
.keys li { flex: 1 1 11rem; padding: .6rem .8rem; border: 2px solid #1d7044;
  border-radius: .4rem; background: #f3f8f1; }
.keys strong { display: block; font-size: 1.5rem; line-height: 1.2; }
a { color: #0b4f79; }
nav ol { columns: 2; padding-left: 1.6rem; }
nav li { break-inside: avoid; padding: .15rem 0; }
figure { margin: 1.2rem 0 .6rem; break-inside: avoid; max-width: 42rem; }
figcaption, caption { font-weight: bold; text-align: left; margin-bottom: .4rem;
  padding: .2rem 0; }
svg { display: block; height: auto; print-color-adjust: exact;
  -webkit-print-color-adjust: exact; }
.scroll { overflow-x: auto; margin: .6rem 0 1.4rem; }
table { border-collapse: collapse; font-size: 1rem; line-height: 1.3;
  overflow-wrap: normal; font-variant-numeric: tabular-nums; }
th, td { padding: .3rem .6rem; border-bottom: 1px solid #c9c9c9; text-align: right;
  vertical-align: top; }
th { font-weight: normal; }
thead th, thead td { vertical-align: bottom; border-bottom: 2px solid #1a1a1a;
  background: #f3f8f1; }
thead th { font-weight: bold; }
.unit { display: block; font-weight: normal; color: #3d3d3d; }
.words { text-align: left; min-width: 6rem; }
tbody tr:nth-child(even) { background: #f7f7f7; }
li { margin: .3rem 0; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; font-size: .9rem; padding: .8rem;
  border: 1px solid #c9c9c9; background: #f7f7f7; }
footer { margin-top: 2rem; border-top: 1px solid #c9c9c9; color: #3d3d3d; }
@media (max-width: 34rem) {
  main { padding: .8rem; }
  nav ol { columns: 1; }
  .keys li { flex-basis: 100%; }
  h1 { font-size: 1.6rem; }
  h2 { font-size: 1.35rem; }
  table { font-size: .95rem; }
  th, td { padding: .25rem .4rem; }
}
@page { size: letter; margin: .6in .7in; }
@media print {
  body { font-size: 11pt; line-height: 1.35; }
  main { max-width: none; padding: 0; }
  nav { display: none; }
  h1 { font-size: 19pt; }
  h2 { font-size: 15pt; margin-top: 18pt; break-after: avoid; }
  h3, .answer h2 { font-size: 12pt; margin: 7pt 0 1pt; break-after: avoid; }
  figcaption, caption { break-after: avoid; }
  figure { max-width: 5in; margin: 8pt 0; }
  svg { max-height: 7.5in; }
  table { font-size: 9.5pt; }
  th, td { padding: 2pt 4pt; }
  tr { break-inside: avoid; }
  thead { display: table-header-group; }
  .scroll { overflow: visible; margin: 4pt 0 10pt; }
  .few { break-inside: avoid; }
  .answer { break-after: page; font-size: 10.5pt; line-height: 1.26; }
  .answer p { margin: 1.5pt 0; }
  .answer .subject { font-size: 12pt; }
  .answer h2 { margin-top: 4pt; }
  .people { font-size: 10pt; }
  .keys { margin: 4pt 0; gap: 6pt; }
  .keys li { flex: 1 1 1.6in; padding: 3pt 6pt; margin: 0; }
  .keys strong { font-size: 14pt; }
  pre { font-size: 8.5pt; }
}
)";

}  // namespace staddle
