import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Layer, LayoutListing, NewLayout } from '../../server/contract/layouts.ts';
import type { Problem } from '../../server/contract/values.ts';
import { countNew } from '../cards/counts.ts';
import { justKept } from '../cards/just-kept.ts';
import { announce } from '../table/announce.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { Typed } from '../table/typed.tsx';
import { editorWords } from '../words/editor.ts';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { layouts, pads } from '../wire/shelves.ts';
import { CardDrawing } from './card-drawing.tsx';
import { ElementList } from './element-list.tsx';
import { faultyElement } from './elements.ts';
import { inHerWords } from './in-her-words.ts';
import { LayerForm } from './layer-form.tsx';
import { LayerList } from './layer-list.tsx';
import type { PaperShown } from './layer-paper.tsx';
import { readFromFile, saveToFile } from './layout-file.ts';
import { added, kinds, papersIn } from './order-layers.ts';
import { paperFor } from './paper-for.ts';
import { Told } from './told.tsx';
import { begun, changed, redone, undone } from './undo.ts';
import { faultyLayer, useCheck } from './use-check.ts';
import { useKeptClear } from './use-kept-clear.ts';

interface Props {
  readonly start: NewLayout;
  /** The id under which it is kept as hers; null for one that is not kept yet. */
  readonly hers: string | null;
  /** The pad whose papers are laid in while she draws. */
  readonly pad: string;
  readonly close: () => void;
}

const said = editorWords;

/** A layout drawn by her own hand: seen large, changed layer by layer, told at once whether it can be cut. */
export function LayoutEditor({ start, hers, pad, close }: Props): VNode {
  const [drawn, setDrawn] = useState(() => begun(start));
  const [draft, setDraft] = useState<NewLayout | null>(null);
  const [chosen, choose] = useState(start.layers.length - 1);
  const [mishap, setMishap] = useState<Problem | null>(null);
  const [sure, setSure] = useState(false);
  const [leaving, setLeaving] = useState(false);
  const layout = draft ?? drawn.now;
  const at = Math.min(chosen, layout.layers.length - 1);
  const { checked, fault } = useCheck(drawn.now);
  const whole = pads.at(pad).value.value;
  const barred =
    fault !== null ? said.faultFirst : drawn.now.name.trim() === '' ? said.nameFirst : null;
  const side = useKeptClear(fault !== null);
  const letters = (layer: Layer): string => letterOf(layout, layer);
  const paperOf = (layer: Layer): PaperShown | null => whole && paperFor(whole, layout, layer);

  function settle(next: NewLayout, then = at): void {
    setDraft(null);
    setDrawn((before) => changed(before, next));
    choose(then);
  }

  function walk(step: typeof undone): void {
    setDraft(null);
    setDrawn(step);
  }

  /** Asks before a drawing that is not kept is lost. */
  function leave(): void {
    if (drawn.past.length === 0) close();
    else setLeaving(true);
  }

  function keys(event: KeyboardEvent): void {
    const writing = event.target instanceof HTMLInputElement;
    if (writing || !(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    walk(key === 'y' || event.shiftKey ? redone : undone);
  }

  async function attempt(work: () => Promise<LayoutListing | null>, done: string): Promise<void> {
    setMishap(null);
    try {
      const kept = await work();
      await layouts.fresh('all');
      if (kept !== null) {
        justKept.value = kept.id;
        if (kept.id !== hers) countNew(pad, kept.id);
      }
      announce(done);
      close();
    } catch (problem) {
      setMishap(asProblem(problem));
    }
  }

  function save(): Promise<void> {
    const now = { ...drawn.now, name: drawn.now.name.trim() };
    return attempt(
      () => (hers === null ? service.addLayout(now) : service.changeLayout(hers, now)),
      said.kept(now.name),
    );
  }

  /** Under another name, beside the one it was made from. */
  function saveCopy(): Promise<void> {
    const name = said.copied(drawn.now.name.trim());
    return attempt(() => service.addLayout({ ...drawn.now, name }), said.kept(name));
  }

  async function open(file: File | undefined): Promise<void> {
    if (!file) return;
    setMishap(null);
    const read = await readFromFile(file);
    try {
      if (read === null) throw new Error(said.noLayout(file.name));
      const { name, card, fold, layers, elements } = read;
      const next = { name, card, fold, layers, ...(elements && { elements }) };
      await service.checkLayout(next);
      settle(next, next.layers.length - 1);
    } catch (problem) {
      setMishap(asProblem(problem));
    }
  }

  return (
    <Dialog title={hers === null ? said.title : said.titleHers} close={leave} wide>
      {leaving && (
        <div class="editor-ends" role="alert">
          <p>{said.notKept}</p>
          <button type="button" class="button" onClick={() => setLeaving(false)}>
            {said.stay}
          </button>
          <button type="button" class="button quiet" onClick={close}>
            {said.leave}
          </button>
        </div>
      )}
      <div class="editor" onKeyDown={keys}>
        <div class="editor-card">
          <CardDrawing
            layout={layout}
            chosen={at}
            choose={choose}
            draft={setDraft}
            settle={settle}
            letterOf={letters}
            paperOf={paperOf}
          />
          <div class="steps" role="group" aria-label={planWords.steps}>
            <button
              type="button"
              class="round wide"
              disabled={drawn.past.length === 0}
              onClick={() => walk(undone)}
            >
              <Icon name="undo" />
              <span>{planWords.undo}</span>
            </button>
            <button
              type="button"
              class="round wide"
              disabled={drawn.future.length === 0}
              onClick={() => walk(redone)}
            >
              <Icon name="redo" />
              <span>{planWords.redo}</span>
            </button>
          </div>
          <div class="adds" role="group" aria-label={said.add}>
            {kinds.map((kind) => (
              <button
                key={kind}
                type="button"
                class="round wide"
                disabled={layout.layers.length >= MOST_LAYERS}
                onClick={() => settle(added(drawn.now, kind), drawn.now.layers.length)}
              >
                <Icon name="plus" />
                <span>{said.kinds[kind]}</span>
              </button>
            ))}
          </div>
          {layout.layers.length >= MOST_LAYERS && (
            <p class="small">{said.mostLayers(MOST_LAYERS)}</p>
          )}
        </div>
        <div class="editor-side" ref={side}>
          <label class="field">
            <span>{said.name}</span>
            <Typed
              value={layout.name}
              maxLength={80}
              autoComplete="off"
              settle={(name) => settle({ ...drawn.now, name })}
            />
          </label>
          <LayerList
            layout={layout}
            chosen={at}
            faulty={faultyLayer(fault)}
            choose={choose}
            settle={settle}
            letterOf={letters}
            paperOf={paperOf}
          />
          <LayerForm layout={layout} chosen={at} settle={settle} />
          <ElementList
            layout={layout}
            chosen={at}
            faulty={faultyElement(fault?.field)}
            settle={settle}
          />
          <div class={`editor-told${fault ? ' wrong' : ''}`}>
            {fault && <Mishap problem={inHerWords(fault, drawn.now)} />}
            {checked && !fault && <Told checked={checked} layout={drawn.now} chosen={at} />}
          </div>
          {mishap && <Mishap problem={mishap} />}
          {barred !== null && (
            <p class="small" id="editor-barred">
              {barred}
            </p>
          )}
          <div class="editor-ends">
            <button
              type="button"
              class="button"
              aria-describedby={barred === null ? undefined : 'editor-barred'}
              disabled={barred !== null}
              onClick={() => void save()}
            >
              <Icon name="tick" /> {said.save}
            </button>
            {hers !== null && (
              <button
                type="button"
                class="button quiet"
                disabled={fault !== null}
                onClick={() => void saveCopy()}
              >
                {said.saveCopy}
              </button>
            )}
            <button type="button" class="button quiet" onClick={() => saveToFile(drawn.now)}>
              {said.toFile}
            </button>
            <label class="button quiet file">
              <input
                type="file"
                accept="application/json,.json"
                onChange={(event) => {
                  void open(event.currentTarget.files?.[0]);
                  event.currentTarget.value = '';
                }}
              />
              {said.fromFile}
            </label>
            {hers !== null && (
              <button
                type="button"
                class="button quiet"
                onClick={() =>
                  sure
                    ? void attempt(() => service.removeLayout(hers).then(() => null), said.removed)
                    : setSure(true)
                }
              >
                {sure ? said.throwAwaySure : said.throwAway}
              </button>
            )}
          </div>
        </div>
      </div>
    </Dialog>
  );
}

/** As many as the service takes. */
const MOST_LAYERS = 24;

/** The letter of a patterned paper; plain cardstock has none. */
function letterOf(layout: NewLayout, layer: Layer): string {
  if (layer.material === 'cardstock') return '';
  return words.letter(papersIn(layout, 'patterned').indexOf(layer.paper));
}
