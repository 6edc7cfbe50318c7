/** Style of the part of a page that answers back. */
export const liveStyle = `
.live-form{max-width:60rem}
.live fieldset{margin:0 0 1.2rem;padding:0;border:0;min-width:0}
.live legend{padding:0;margin-bottom:.5rem;font-weight:bold}
.controls{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,12.8rem),1fr));gap:.9rem 1.6rem}
.control{display:grid;gap:.25rem;align-content:start;min-width:0}
.wide-control{grid-column:1/-1}
.bounds{color:var(--muted);font-size:.8125rem;line-height:1.4}
.steps{display:inline-flex;max-width:11rem}
.slide{display:flex;align-items:center;gap:.7rem}
.slide input{flex:1;min-width:0;min-height:1.75rem;accent-color:var(--blue)}
.slide output{min-width:3.6rem;font-variant-numeric:tabular-nums;font-weight:bold;text-align:right}
.live button,.live input[type=number],.live input[type=text],.live select{font:inherit;color:var(--ink);background:#fff;border:1px solid #75808a;border-radius:.25rem;min-height:2.5rem;padding:.3rem .7rem}
.live select,.live input[type=text]{width:100%;min-width:0}
.steps button{width:2.6rem;padding:0;font-weight:bold}
.steps input{width:4.5rem;text-align:center;border-radius:0;border-inline:0;appearance:textfield;-moz-appearance:textfield}
.steps input::-webkit-inner-spin-button{appearance:none;margin:0}
.steps button:first-child{border-radius:.25rem 0 0 .25rem}
.steps button:last-child{border-radius:0 .25rem .25rem 0}
.live input.moved,.live select.moved{border-color:var(--blue);background:var(--pale);font-weight:bold;box-shadow:inset 0 -3px var(--blue)}
.live button{cursor:pointer}
.live button:hover{border-color:var(--blue)}
.live button:disabled{color:var(--muted);cursor:default;background:var(--ground)}
.live button.play{background:var(--blue);border-color:var(--blue);color:#fff;font-weight:bold;padding-inline:1.6rem}
.live button.play:disabled{background:var(--ground);border-color:#75808a;color:var(--muted)}
.live-buttons{display:flex;flex-wrap:wrap;gap:.7rem;margin:.4rem 0 .8rem}
.live-status{margin:0;min-height:1.55em}
.live-progress{display:block;width:100%;max-width:30rem;height:.8rem;margin:.3rem 0 .6rem;accent-color:var(--blue)}
.live-progress[hidden],.live [hidden]{display:none}
.live-refused{margin:.8rem 0;padding:.8rem 1.1rem;border:1px solid var(--rule);border-left:6px solid var(--warm);background:#fdfaf4}
.live-refused p{margin:0;font-weight:bold}
.live pre{white-space:pre-wrap;overflow-wrap:anywhere}
.live-words{margin:.6rem 0}
.live-link{display:grid;gap:.25rem;margin:.8rem 0 0}
.live-answer{margin-top:1.4rem;border-top:2px solid var(--ink);padding-top:1rem}
.live-sentence{max-width:58rem;margin:.2rem 0 1rem;font-size:clamp(1.05rem,1rem + .5vw,1.4rem);line-height:1.35;font-weight:bold}
.live-state{margin:0;color:var(--muted)}
.live-charts{margin:.6rem 0 1.2rem;padding:0;list-style:none}
.live-charts li{border-bottom:1px solid var(--rule)}
.live-charts summary{padding:.55rem 0}
.beside{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,26rem),1fr));gap:1rem 2rem}
.beside figure{min-width:0;margin-bottom:1.2rem}
.beside figcaption{font-size:1rem}
.beside .small{max-width:30rem}
.lab{display:block;color:var(--muted);font-size:.8125rem;font-weight:normal}
@media screen and (max-width:43rem){
.count{grid-template-columns:1fr auto;align-items:center}
.count .bounds{grid-column:1/-1}
}
@media print{.live-form,.live-off{display:none}}
`;
