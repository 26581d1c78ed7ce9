import { type FormEvent, useId, useState } from 'react';
import { planRoomPlaced } from '../../plan/edits/settings.ts';
import { demoLay, demos } from '../files/demos.ts';
import { filePick } from '../files/files.ts';
import { figureRead, figureShort } from '../parts/format.ts';
import { commit } from '../state/planStore.ts';

/** What an empty sheet says: three ways to begin. It goes away with the first room. */
export function Begin() {
  return (
    <div className="begin">
      <div>
        <h2>An empty sheet</h2>
        <ol>
          <li>
            <h3>Place a room</h3>
            <p>Clear floor between the finished walls.</p>
            <RoomForm />
          </li>
          <li>
            <h3>Open a plan</h3>
            <p>A plan file from your disk, or drop it anywhere on the board.</p>
            <button type="button" className="button framed" onClick={filePick}>
              Open a plan file
            </button>
          </li>
          <li>
            <h3>Try a demo</h3>
            <p>A finished floor with its bays, joints and findings.</p>
            <div className="choices">
              {demos.map((demo) => (
                <button key={demo.path} type="button" className="button framed" onClick={() => void demoLay(demo)}>
                  {demo.name}
                </button>
              ))}
            </div>
          </li>
        </ol>
      </div>
    </div>
  );
}

/** A side of a room, m. */
const leastSideM = 0.5;
const mostSideM = 200;

function RoomForm() {
  const [lengthText, setLengthText] = useState('6');
  const [widthText, setWidthText] = useState('4.5');
  const [wrong, setWrong] = useState(false);
  const place = (event: FormEvent) => {
    event.preventDefault();
    const [lengthM, widthM] = [sideRead(lengthText), sideRead(widthText)];
    setWrong(lengthM === null || widthM === null);
    if (lengthM === null || widthM === null) return;
    commit('Place a room', (file) => planRoomPlaced(file, 'Room', lengthM * 1000, widthM * 1000));
  };
  return (
    <form onSubmit={place} noValidate>
      <div className="room-form">
        <SideField label="Length" text={lengthText} onText={setLengthText} />
        <SideField label="Width" text={widthText} onText={setWidthText} />
        <button type="submit" className="button main">
          Place the room
        </button>
      </div>
      {wrong && (
        <p className="wrong-word" role="alert">
          Enter two sides from {figureShort(leastSideM, 1)} to {mostSideM} m.
        </p>
      )}
    </form>
  );
}

function sideRead(text: string): number | null {
  const sideM = figureRead(text);
  return sideM === null || sideM < leastSideM || sideM > mostSideM ? null : sideM;
}

interface SideFieldProps {
  readonly label: string;
  readonly text: string;
  readonly onText: (text: string) => void;
}

function SideField({ label, text, onText }: SideFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          onChange={(event) => onText(event.target.value)}
        />
        <span className="unit">m</span>
      </span>
    </div>
  );
}
