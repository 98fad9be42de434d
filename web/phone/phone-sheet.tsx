import { useEffect, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Code } from '../../server/contract/keys.ts';
import type { Problem } from '../../server/contract/values.ts';
import { Dialog } from '../table/dialog.tsx';
import { Mishap } from '../table/mishap.tsx';
import { phoneWords } from '../words/phone.ts';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { keys } from '../wire/shelves.ts';
import { CodePicture } from './code-picture.tsx';

/** A picture that the phone's camera reads; behind it stands a code that lets in one phone, once. */
export function PhoneSheet({ pad, close }: { pad: string; close: () => void }): VNode {
  const [code, setCode] = useState<Code | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const ask = (): void => {
    setProblem(null);
    service.newCode({ pad, name: phoneWords.name }).then(setCode, (fault: unknown) => {
      setProblem(asProblem(fault));
    });
  };
  useEffect(ask, [pad]);
  return (
    <Dialog title={phoneWords.title} close={close}>
      {problem && <Mishap problem={problem} again={ask} />}
      {code && <Addressed code={code} again={ask} />}
      <Devices />
    </Dialog>
  );
}

function Addressed({ code, again }: { code: Code; again: () => void }): VNode {
  const [first, ...others] = code.addresses;
  if (first === undefined) return <p role="alert">{phoneWords.noNetwork}</p>;
  const until = new Date(code.expiresAt).toLocaleTimeString([], { timeStyle: 'short' });
  return (
    <>
      <p>{phoneWords.how}</p>
      <CodePicture text={first} />
      <p class="small">
        {phoneWords.wifi} {phoneWords.until(until)}
      </p>
      <p class="small">{phoneWords.address}</p>
      <p class="typed-address">{first}</p>
      {others.length > 0 && <p class="small">{phoneWords.other}</p>}
      {others.map((address) => (
        <p key={address} class="typed-address">
          {address}
        </p>
      ))}
      <button type="button" class="button quiet" onClick={again}>
        {phoneWords.again}
      </button>
    </>
  );
}

/** Who may come in already, and how that is ended. */
function Devices(): VNode | null {
  useEffect(() => {
    void keys.fresh('all');
  }, []);
  const devices = keys.at('all').value.value ?? [];
  if (devices.length === 0) return null;
  return (
    <>
      <h3>{phoneWords.keys}</h3>
      <ul class="devices">
        {devices.map(({ id, name, pad }) => (
          <li key={id}>
            {phoneWords.keyFor(name, pad === null)}
            <button
              type="button"
              class="button quiet"
              aria-label={phoneWords.takeAway(name)}
              onClick={() => {
                void service.removeKey(id).finally(() => keys.fresh('all'));
              }}
            >
              {photosWords.stop}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
