package vector

// Style is what a page needs to show the pictures in their colours, on a light page and on a
// dark one; it touches nothing but them. Texts are of one ink, which is at least 7:1 on all that
// they stand on (style_test.go).
const Style = `.picture { display: block; width: 100%; min-width: calc(22rem - 64px); max-width: 32rem; height: auto; margin: 0 auto;
  --v-ink: #141e28; --v-paper: #ffffff; --v-quiet: #45505c; --v-grid: #dde2e7; --v-curve: #073162; --v-doubt: #c6d8ec; --v-rib: #4d729b;
  --v-band: #ffeeb0; --v-edge: #7d5f00; --v-bed: #cbc3b5; --v-signal: #ae4a00;
  --v-t0: #bfbce7; --v-t1: #c8c7e1; --v-t2: #d2d1d9; --v-t3: #e1dbd2; --v-t4: #f3e4cc; --v-t5: #ffefd8; }
@media screen and (prefers-color-scheme: dark) {
  .picture { --v-ink: #e9eef3; --v-paper: #0f161d; --v-quiet: #b4bec8; --v-grid: #2a343e; --v-curve: #9cc3ee; --v-doubt: #24405f; --v-rib: #6c93bd;
    --v-band: #45380c; --v-edge: #e0bb55; --v-bed: #2a2622; --v-signal: #ff9f5a;
    --v-t0: #22295a; --v-t1: #272e4c; --v-t2: #2d3240; --v-t3: #373434; --v-t4: #42382a; --v-t5: #4b3b20; }
}
.v-text, .v-name, .v-dot { fill: var(--v-ink); }
.v-line { stroke: var(--v-ink); }
.v-pointer { stroke: var(--v-quiet); }
.v-grid { stroke: var(--v-grid); }
.v-paper { fill: var(--v-paper); fill-opacity: 1; }
.v-ring { fill: var(--v-paper); stroke: var(--v-ink); }
.v-rim { stroke: var(--v-paper); }
.v-curve { stroke: var(--v-curve); }
.v-hull { fill: var(--v-curve); }
.v-doubt { fill: var(--v-doubt); fill-opacity: 1; }
.v-rib { stroke: var(--v-rib); }
.v-band { fill: var(--v-band); fill-opacity: 1; }
.v-edge { stroke: var(--v-edge); }
.v-bed { fill: var(--v-bed); fill-opacity: 1; }
.v-flyline, .v-oxygen { stroke: var(--v-signal); }
.v-float { fill: var(--v-signal); }
.v-t0 { fill: var(--v-t0); fill-opacity: 1; }
.v-t1 { fill: var(--v-t1); fill-opacity: 1; }
.v-t2 { fill: var(--v-t2); fill-opacity: 1; }
.v-t3 { fill: var(--v-t3); fill-opacity: 1; }
.v-t4 { fill: var(--v-t4); fill-opacity: 1; }
.v-t5 { fill: var(--v-t5); fill-opacity: 1; }
`
