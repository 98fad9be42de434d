import type { ComponentChildren, VNode } from 'preact';
import { Icon, type IconName } from '../table/icon.tsx';

interface Props {
  readonly icon: IconName;
  readonly take: (files: readonly File[]) => void;
  readonly camera?: boolean;
  readonly several?: boolean;
  readonly children: ComponentChildren;
}

/** A button that opens the camera or the file chooser: the file field itself, dressed as a button. */
export function FileButton({ icon, take, camera, several, children }: Props): VNode {
  return (
    <label class={camera ? 'button file camera' : 'button quiet file'}>
      <input
        type="file"
        accept="image/*,.heic,.heif"
        multiple={several ?? false}
        {...(camera ? { capture: 'environment' } : {})}
        onChange={(event) => {
          take([...(event.currentTarget.files ?? [])]);
          event.currentTarget.value = '';
        }}
      />
      <Icon name={icon} /> {children}
    </label>
  );
}
