import type { VNode } from 'preact';
import { padsWords } from '../words/pads.ts';

/** The way from a pad to cards in four small scenes of cut paper. */
export function WayDrawn(): VNode {
  return (
    <ol class="way">
      {scenes.map((Scene, index) => (
        <li key={padsWords.way[index]}>
          <svg viewBox="0 0 160 110" aria-hidden="true" class="scene">
            <Scene />
          </svg>
          <span>{padsWords.way[index]}</span>
        </li>
      ))}
    </ol>
  );
}

const scenes = [PhotoScene, ColourScene, CardScene, CutScene];

function PhotoScene(): VNode {
  return (
    <>
      <Sheet x={18} y={34} tone="kelp" />
      <Sheet x={52} y={34} tone="coral" />
      <Sheet x={18} y={68} tone="sand" />
      <Sheet x={52} y={68} tone="teal" />
      <g class="scene-lift">
        <rect class="scene-slate" x="88" y="12" width="54" height="86" rx="5" />
        <rect class="scene-table" x="92" y="20" width="46" height="62" />
        <rect class="kelp" x="97" y="26" width="16" height="16" />
        <rect class="coral" x="117" y="26" width="16" height="16" />
        <rect class="sand" x="97" y="46" width="16" height="16" />
        <rect class="teal" x="117" y="46" width="16" height="16" />
        <circle class="shell" cx="115" cy="90" r="4" />
      </g>
    </>
  );
}

function ColourScene(): VNode {
  return (
    <>
      <g class="scene-lift">
        <rect class="shell" x="20" y="14" width="62" height="62" />
        {[0, 1, 2].map((row) =>
          [0, 1, 2].map((column) => (
            <g key={`${row}${column}`}>
              <circle class="coral" cx={31 + column * 20} cy={25 + row * 20} r="6.5" />
              <circle class="teal" cx={31 + column * 20} cy={25 + row * 20} r="2.6" />
            </g>
          )),
        )}
      </g>
      {(['shell', 'coral', 'teal', 'kelp', 'sand'] as const).map((tone, n) => (
        <g key={tone} class="scene-lift">
          <rect class={tone} x={92 + n * 4} y={16 + n * 15} width={52 - n * 7} height="13" />
        </g>
      ))}
      <rect class="sand" x="20" y="82" width="36" height="9" />
      <rect class="coral" x="56" y="82" width="17" height="9" />
      <rect class="teal" x="73" y="82" width="9" height="9" />
    </>
  );
}

function CardScene(): VNode {
  return (
    <>
      <g class="scene-lift" transform="rotate(-5 50 56)">
        <rect class="shell" x="20" y="14" width="60" height="80" />
        <rect class="teal" x="24" y="18" width="52" height="46" />
        <rect class="sand" x="24" y="66" width="52" height="24" />
        <circle class="coral" cx="50" cy="44" r="15" />
      </g>
      <g class="scene-lift" transform="rotate(6 110 58)">
        <rect class="shell" x="82" y="18" width="58" height="78" />
        <rect class="coral" x="86" y="22" width="15" height="70" />
        <rect class="kelp" x="103" y="22" width="15" height="70" />
        <rect class="slate" x="120" y="22" width="15" height="70" />
        <rect class="shell" x="92" y="66" width="40" height="13" />
      </g>
    </>
  );
}

function CutScene(): VNode {
  return (
    <>
      <g class="scene-lift">
        <rect class="kelp" x="22" y="20" width="70" height="70" />
        <path class="scene-cut" d="M66 14V96M22 58H92" />
      </g>
      <g class="scene-lift">
        <rect class="scene-slate" x="100" y="10" width="12" height="92" />
        {Array.from({ length: 11 }, (_, n) => (
          <rect key={n} class="shell" x="100" y={14 + n * 8} width={n % 2 ? 4 : 7} height="1.4" />
        ))}
      </g>
      <g class="scene-lift">
        <rect class="coral" x="120" y="36" width="26" height="38" />
        <rect class="shell" x="124" y="50" width="18" height="9" />
      </g>
    </>
  );
}

function Sheet({ x, y, tone }: { x: number; y: number; tone: string }): VNode {
  return (
    <g class="scene-lift">
      <rect class={tone} x={x} y={y} width="29" height="29" />
    </g>
  );
}
