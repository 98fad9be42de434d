import type { VNode } from 'preact';
import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import { editorWords } from '../words/editor.ts';
import { MeasureField } from './measure-field.tsx';
import { called, layerCalled, sharersOf } from './layer-names.ts';
import { freePaper, inRole, papersIn, shifted, withLayer, without } from './order-layers.ts';
import { typed } from './place-layer.ts';

interface Props {
  readonly layout: NewLayout;
  readonly chosen: number;
  readonly settle: (layout: NewLayout, chosen?: number) => void;
}

const roles = ['mat', 'panel', 'strip', 'focal', 'greeting'] as const;
const materials = ['patterned', 'cardstock'] as const;
const said = editorWords;

/** What the chosen layer is: its place and size as she types them, what it does, its paper, its turn in the stack. */
export function LayerForm({ layout, chosen, settle }: Props): VNode | null {
  const layer = layout.layers[chosen];
  if (!layer) return null;
  const base = chosen === 0;
  const stays = whyItStays(chosen, layout.layers.length);
  const change = (next: Layer): void => settle(withLayer(layout, chosen, next));
  return (
    <div class="layer-form">
      {base ? (
        <p class="small">{said.base}</p>
      ) : (
        <div class="pair">
          <LayerName layout={layout} chosen={chosen} settle={settle} />
          <label class="field">
            <span>{said.role}</span>
            <select
              value={layer.role}
              onChange={(event) =>
                change(inRole(layout, layer, event.currentTarget.value as Layer['role']))
              }
            >
              {roles.map((role) => (
                <option key={role} value={role}>
                  {said.roles[role]}
                </option>
              ))}
            </select>
          </label>
        </div>
      )}
      {!base && (
        <div class="pair measures">
          {(['width', 'height', 'x', 'y'] as const).map((what) => (
            <MeasureField
              key={`${layer.id}/${what}`}
              what={what}
              of={layer}
              take={(text) => typed(layer, layout.card, what, text)}
              change={change}
            />
          ))}
        </div>
      )}
      <PaperField layout={layout} layer={layer} change={change} />
      {!base && (
        <div class="layer-buttons">
          <button
            type="button"
            class="button quiet"
            disabled={chosen === layout.layers.length - 1}
            onClick={() => settle(shifted(layout, chosen, 1), chosen + 1)}
          >
            {said.up}
          </button>
          <button
            type="button"
            class="button quiet"
            disabled={chosen === 1}
            onClick={() => settle(shifted(layout, chosen, -1), chosen - 1)}
          >
            {said.down}
          </button>
          <button
            type="button"
            class="button quiet"
            onClick={() => settle(without(layout, chosen), chosen - 1)}
          >
            {said.remove}
          </button>
        </div>
      )}
      {!base && stays !== '' && <p class="small">{stays}</p>}
    </div>
  );
}

/** Why a layer cannot go further up or down in the stack; empty where it can do both. */
function whyItStays(chosen: number, layers: number): string {
  const [lowest, highest] = [chosen === 1, chosen === layers - 1];
  if (lowest && highest) return said.onlyOne;
  return lowest ? said.lowest : highest ? said.highest : '';
}

/** What she calls the layer; as it is called by itself until she writes something else. */
function LayerName({ layout, chosen, settle }: Props): VNode {
  const now = layerCalled(layout, layout.layers[chosen]!.id);
  return (
    <label class="field">
      <span>{said.layerName}</span>
      <input
        key={now}
        defaultValue={now}
        maxLength={40}
        autoComplete="off"
        onChange={({ currentTarget: { value } }) => {
          if (value.trim() !== now) settle(called(layout, chosen, value));
        }}
      />
    </label>
  );
}

interface PaperProps {
  readonly layout: NewLayout;
  readonly layer: Layer;
  readonly change: (layer: Layer) => void;
}

function PaperField({ layout, layer, change }: PaperProps): VNode {
  return (
    <label class="field">
      <span>{said.paper}</span>
      <select
        value={`${layer.material}/${layer.paper}`}
        onChange={(event) => {
          const [material, paper] = event.currentTarget.value.split(/\/(.*)/s) as [
            Layer['material'],
            string,
          ];
          change({ ...layer, material, paper: paper === '' ? freePaper(layout) : paper });
        }}
      >
        {materials.map((material) => (
          <>
            {papersIn(layout, material).map((paper, n) => (
              <option key={`${material}/${paper}`} value={`${material}/${paper}`}>
                {said.paperOf(material, n, sharersOf(layout, layer, paper))}
              </option>
            ))}
            {(material !== layer.material || sharersOf(layout, layer, layer.paper) !== '') && (
              <option key={`${material}/`} value={`${material}/`}>
                {said.another[material]}
              </option>
            )}
          </>
        ))}
      </select>
    </label>
  );
}
