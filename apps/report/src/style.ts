import { FONT, INK, LINE, MUTED_INK, SECOND_LINE } from '@buildweek/charts';

const screen = `
:root{--ink:${INK};--muted:${MUTED_INK};--blue:${LINE};--warm:${SECOND_LINE};--ground:#f5f3ed;--rule:#d9d5ca;--pale:#e8f0f5}
*{box-sizing:border-box}
html{scroll-behavior:smooth;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;color:var(--ink);background:#fff;font:1rem/1.55 ${FONT};overflow-wrap:anywhere}
a{color:var(--blue)}
:focus-visible{outline:3px solid var(--warm);outline-offset:2px}
.skip{position:absolute;left:-999rem}
.skip:focus{left:1rem;top:.5rem;background:#fff;padding:.4rem .8rem;z-index:1}
.head{background:var(--ground);border-bottom:1px solid var(--rule)}
.inside,.page,footer p{max-width:96rem;margin:0 auto;padding:0 clamp(1rem,3.5vw,3rem)}
.inside{padding-top:1.4rem;padding-bottom:1.6rem}
.program{margin:0;color:var(--muted);font-size:.875rem}
h1{margin:1.1rem 0 0;font-size:1.25rem;line-height:1.3;color:var(--blue)}
.answer{margin:.4rem 0 0;max-width:58rem;font-size:clamp(1.6rem,1.1rem + 2.2vw,2.9rem);line-height:1.16;font-weight:bold;letter-spacing:-.012em;text-wrap:balance}
.answer.long{max-width:64rem;font-size:clamp(1.35rem,1.1rem + 1.1vw,2.05rem);line-height:1.22}
.answer.very-long{max-width:64rem;font-size:clamp(1.15rem,1.05rem + .6vw,1.55rem);line-height:1.3}
.answers{margin:1.1rem 0 0;padding:0;list-style:none;max-width:58rem;font-size:clamp(1.05rem,1rem + .35vw,1.3rem);line-height:1.42}
.answers li{padding-left:1.1rem;border-left:4px solid var(--blue)}
.answers li+li{margin-top:.55rem}
.beware{margin:1.1rem 0 0;padding-left:1.1rem;border-left:4px solid var(--warm);max-width:58rem}
.facts{display:flex;flex-wrap:wrap;gap:.7rem 2.4rem;margin:1.5rem 0 0;font-size:.9375rem}
.facts dt{color:var(--muted);font-size:.8125rem}
.facts dd{margin:0}
.decision .question{margin:.5rem 0 0;max-width:72rem;color:var(--muted);font-size:1rem}
.proposal{margin:.35rem 0 0;max-width:70rem;color:var(--ink);font-size:clamp(1.4rem,1.1rem + 1.3vw,2.2rem);line-height:1.18;letter-spacing:-.012em;text-wrap:balance}
.proposal.long{font-size:clamp(1.25rem,1.05rem + .9vw,1.75rem)}
.decision .beware{margin-top:.6rem;font-size:.9375rem}
.cards{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,16.5rem),1fr));gap:.7rem;margin:0}
.card{padding:.5rem .9rem .55rem;background:#fff;border:1px solid var(--rule);border-top:4px solid var(--blue)}
.card dt{color:var(--muted);font-size:.875rem;line-height:1.35}
.card .subject{display:block;color:var(--ink);font-weight:bold;font-size:.9375rem}
.card dd{margin:0;font-size:.875rem;line-height:1.4}
.card .value{margin-top:.1rem;font-size:1.75rem;font-weight:bold;line-height:1.15;font-variant-numeric:tabular-nums}
.card .unit{font-size:1rem;font-weight:normal}
.card .value .none{font-size:1.5rem;color:var(--ink)}
.card .before{margin-top:.2rem;font-weight:bold}
.card .note-line{color:var(--muted)}
.proof{max-width:72rem;margin-top:.8rem}
.decision .inside{padding-top:.9rem;padding-bottom:1.1rem}
.decision .beware{margin-top:.5rem}
.decision figure{display:block;margin:.7rem 0 0;padding:.6rem 1rem .55rem;background:#fff;border:1px solid var(--rule)}
.term{display:inline;margin:0;padding:0;border:0;border-bottom:1px dotted currentColor;background:none;color:inherit;font:inherit;text-align:inherit;cursor:help}
.term:hover{border-bottom-style:solid}
.explained{max-width:min(24rem,calc(100vw - 2rem));padding:.8rem 1rem;border:1px solid var(--rule);border-top:4px solid var(--blue);background:#fff;color:var(--ink);box-shadow:0 6px 24px rgba(27,36,45,.18);font-size:.9375rem;line-height:1.45}
.explained p{margin:0}
.explained strong::after{content:":"}
dfn{font-style:normal}
@supports (position-area:bottom){.explained{position-area:bottom span-right;position-try-fallbacks:flip-inline,flip-block,flip-block flip-inline;margin:.35rem 0}}
.first-reasons{margin:.9rem 0 0;padding:0;list-style:none;font-size:.9375rem;line-height:1.42}
.first-reasons li{padding-left:.9rem;border-left:4px solid var(--blue)}
.first-reasons li+li{margin-top:.45rem}
.decision figcaption{margin-bottom:.4rem;font-size:1.0625rem}
.decision .wide,.decision .note{max-width:none;margin-top:0}
.part-title{margin:3rem 0 0;padding-top:1rem;border-top:4px solid var(--blue);font-size:1.125rem;color:var(--muted)}
nav{font-size:.9375rem}
nav ul{display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;margin:0;padding:.9rem 0;list-style:none;border-bottom:1px solid var(--rule)}
nav a{display:inline-block;padding:.15rem 0;text-decoration:none}
nav a:hover{text-decoration:underline}
main{min-width:0;padding-bottom:2rem}
section{padding-top:2.6rem;scroll-margin-top:.5rem}
h2{margin:0 0 .6rem;font-size:1.6rem;line-height:1.2;letter-spacing:-.01em}
h3{margin:1.4rem 0 0;font-size:1rem}
.lede{max-width:46rem;margin:0 0 1.2rem;color:var(--muted)}
figure{margin:0 0 2.4rem}
figcaption{max-width:60rem;margin:0 0 .7rem;font-size:1.125rem;line-height:1.35;font-weight:bold}
.picture svg{display:block;width:100%;height:auto}
.head figure{margin:1.5rem 0 0}
.notes{max-width:46rem;margin:0;padding-left:1.2rem}
.notes li+li{margin-top:.3rem}
.wide{max-width:60rem}
.narrow{display:none;max-width:30rem}
.note{max-width:60rem;margin-top:.6rem;color:var(--muted);font-size:.875rem;line-height:1.45}
.note p{margin:0 0 .3rem}
summary{cursor:pointer;color:var(--blue)}
.more>summary{font-weight:bold;padding:.35rem 0}
.scroll{overflow-x:auto;margin:.4rem 0 1.2rem;background:linear-gradient(90deg,#fff 40%,rgba(255,255,255,0)) left/3rem 100% no-repeat local,linear-gradient(-90deg,#fff 40%,rgba(255,255,255,0)) right/3rem 100% no-repeat local,linear-gradient(90deg,rgba(27,36,45,.28),rgba(27,36,45,0)) left/.8rem 100% no-repeat scroll,linear-gradient(-90deg,rgba(27,36,45,.28),rgba(27,36,45,0)) right/.8rem 100% no-repeat scroll}
.sideways{display:none}
table{overflow-wrap:normal;border-collapse:collapse;font-size:.9375rem;line-height:1.4;font-variant-numeric:tabular-nums}
bdi{overflow-wrap:anywhere}
caption{padding:0 0 .5rem;text-align:left;color:var(--muted);font-size:.875rem}
th,td{padding:.4rem .9rem .4rem 0;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
thead th{vertical-align:bottom;border-bottom:2px solid var(--ink);font-size:.875rem}
tbody th{font-weight:normal;min-width:9rem;max-width:26rem}
td.words{min-width:9rem;max-width:34rem}
.number{text-align:right}
td.number{white-space:nowrap}
.interval{color:var(--muted);font-size:.8125rem;white-space:nowrap}
.interval::before{content:"("}
.interval::after{content:")"}
.dense{font-size:.875rem}
.dense th,.dense td{padding-right:.75rem}
.dense .interval{display:block}
.reasons{margin:0 0 1.2rem;padding-left:1.4rem;max-width:60rem;color:var(--muted);font-size:.8125rem}
sup{line-height:0;font-size:.7em}
.none{color:var(--muted);white-space:normal}
.wait{display:inline-block;margin-right:.8rem}
#key-numbers table{font-size:1.0625rem}
.meaning{display:block;max-width:38rem;color:var(--muted);font-size:.8125rem}
#targets tbody th{max-width:38rem}
#targets td.words{min-width:7rem}
.verdict{font-weight:bold;white-space:nowrap}
.mark{display:inline-block;width:1.35rem;height:1.35rem;margin-right:.15rem;border:2px solid var(--muted);border-radius:50%;line-height:1.1rem;text-align:center;font-size:.875rem}
.met .mark{border-color:var(--blue);background:var(--blue);color:#fff}
.missed .mark{border-color:var(--warm);background:var(--warm);color:#fff;border-radius:.2rem}
.open .mark{border-style:dashed}
#key-numbers tbody th{font-weight:bold}
.cautions{margin-top:2.6rem;padding:1.2rem 1.4rem 1.3rem;border:1px solid var(--rule);border-left:6px solid var(--warm);background:#fdfaf4}
.cautions h2,.warnings h2{font-size:1.25rem}
.cautions dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,17.5rem),1fr));gap:.7rem 1.8rem;margin:0;font-size:.9375rem;line-height:1.45}
.cautions dt{font-weight:bold}
.cautions dd{margin:0}
.warnings{margin-top:1.4rem;padding:1.2rem 1.4rem 1.3rem;border:1px solid var(--rule);border-left:6px solid var(--blue);background:var(--pale)}
.warnings ul{margin:0;padding-left:1.2rem}
.origin{display:grid;gap:.5rem;margin:0 0 1.4rem;max-width:60rem}
.origin div{display:grid;grid-template-columns:12rem 1fr;gap:.2rem 1rem}
.origin dt{color:var(--muted)}
.origin dd{margin:0}
pre{max-width:60rem;margin:.4rem 0 0;padding:1rem;overflow-x:auto;background:var(--ground);font:.875rem/1.5 ui-monospace,Menlo,Consolas,"Liberation Mono",monospace;overflow-wrap:normal;unicode-bidi:plaintext}
mark{background:#f7d9a8;color:inherit}
.problems{padding-left:1.6rem}
.problems li+li{margin-top:1.4rem}
.problems dl{margin-top:.5rem}
.problems .line{color:var(--muted)}
footer{margin-top:1rem;background:var(--ground);border-top:1px solid var(--rule);color:var(--muted);font-size:.8125rem}
footer p{padding-top:1.2rem;padding-bottom:2rem}
`;

const narrow = `
@media screen and (max-width:43rem){
.wide{display:none}
.narrow{display:block}
section{padding-top:2rem}
h2{font-size:1.4rem}
.origin div{grid-template-columns:1fr}
.origin dt{margin-top:.4rem}
tbody th{min-width:7.5rem;max-width:12rem}
.answers li{padding-left:.8rem}
.sideways{display:block;margin:.8rem 0 0;color:var(--muted);font-size:.8125rem}
td.words{min-width:6rem}
#targets tbody th{min-width:10rem}
#targets td.words{min-width:4.5rem;padding-right:.5rem}
#key-numbers table{font-size:1rem}
#key-numbers td.number{white-space:normal;min-width:0}
#key-numbers .interval{display:block}
#key-numbers tbody th{min-width:0}
#key-numbers caption{min-width:0}
}
`;

const large = `
@media screen and (min-width:80rem){
.proof{display:grid;grid-template-columns:19rem minmax(0,1fr);gap:1rem;max-width:none}
.cards{grid-template-columns:1fr;align-content:space-between}
.decision figure{margin:0}
.page{display:grid;grid-template-columns:11.5rem minmax(0,1fr);gap:0 2.6rem}
nav ul{position:sticky;top:0;display:block;padding:2.7rem 0 1rem;border-bottom:0}
nav li{margin-bottom:.25rem}
}
@media screen and (min-width:96rem){
figure{display:grid;grid-template-columns:minmax(0,60rem) minmax(12rem,17rem);gap:0 2.2rem}
figcaption{grid-column:1/-1}
.note{margin-top:.2rem}
}
`;

const print = `
@media print{
@page{size:A4;margin:14mm 13mm 15mm}
html{font-size:10.5pt}
body{line-height:1.4}
.head{background:none;border-bottom:2px solid var(--ink)}
.inside,.page,footer p{max-width:none;padding-left:0;padding-right:0}
.inside{padding-top:0}
nav,.skip,.note details,.explained{display:none}
.term{border:0}
.decision .note{display:none}
.proof{display:block}
.first-reasons{font-size:9.5pt}
.answer{font-size:20pt}
.answer.long{max-width:64rem;font-size:15pt}
.answers{font-size:11pt}
.cautions dl{grid-template-columns:repeat(3,1fr);font-size:8.5pt}
.cards{grid-template-columns:repeat(3,1fr);gap:6pt}
.card .value{font-size:17pt}
.card dt,.card dd{font-size:8.5pt}
.proposal,.proposal.long{font-size:15pt}
.card,.decision figure{break-inside:avoid}
.screen-only{display:none}
section{padding-top:14pt}
h2,h3,figcaption,.lede,caption,summary{break-after:avoid}
figure,tr,.cautions div,.facts div{break-inside:avoid}
.scroll{overflow:visible;background:none}
.sideways{display:none}
tbody th bdi{overflow-wrap:break-word}
table{font-size:8pt}
th,td{padding:2pt 5pt 2pt 0}
thead th{font-size:7.5pt}
thead,tbody tr:first-child{break-after:avoid}
tbody tr:first-child{break-before:avoid}
td.number{white-space:normal}
.lede{max-width:none;break-inside:avoid}
tbody th,td.words{min-width:0}
.interval{font-size:7pt}
.note,caption{font-size:8pt}
#key-numbers table{font-size:10pt}
#key-numbers .interval{font-size:9pt}
.cautions,.warnings,footer{background:none}
pre{white-space:pre-wrap;font-size:7.5pt;background:none;padding:0}
a{color:inherit;text-decoration:none}
summary{color:inherit;list-style:none}
details::details-content{content-visibility:visible;height:auto}
}
`;

/** The whole style sheet of the page. */
export const style = `${screen}${narrow}${large}${print}`;
