import type { PhotoAnswer } from '../../server/contract/pads.ts';
import { problemFrom, Refused, unreachable } from '../wire/ask.ts';
import type { Sending } from './sending.ts';

/** A photo on the wire: when it arrives, and the way to stop it. */
export interface Underway {
  readonly answer: Promise<PhotoAnswer>;
  readonly stop: () => void;
}

/** Sends one photo. XMLHttpRequest, because fetch does not say how much of a body is sent. */
export function sendPhoto(sending: Sending, progress: (share: number) => void): Underway {
  const request = new XMLHttpRequest();
  const answer = new Promise<PhotoAnswer>((resolve, reject) => {
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) progress(event.loaded / event.total);
    };
    request.onerror = () => reject(unreachable());
    request.onabort = () => reject(unreachable());
    request.onload = () => {
      const { status, responseText } = request;
      if (status === 201) resolve(JSON.parse(responseText) as PhotoAnswer);
      else reject(new Refused(problemFrom(status, responseText), waitOf(request)));
    };
  });
  request.open('POST', `/api/pads/${sending.pad}/photos`);
  request.send(formOf(sending));
  return { answer, stop: () => request.abort() };
}

/** What the service asks to wait, in milliseconds. */
function waitOf(request: XMLHttpRequest): number {
  return 1000 * (Number(request.getResponseHeader('retry-after') ?? 0) || 0);
}

function formOf({ berth, file, name }: Sending): FormData {
  const form = new FormData();
  // The words stand before the file, so that the service knows them when the file comes.
  form.append('side', berth.side);
  form.append('arrangement', berth.arrangement);
  form.append('photo', file, name);
  return form;
}
