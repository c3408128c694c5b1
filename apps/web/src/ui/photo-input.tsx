import { useEffect, useState } from 'react';
import { useText } from '../texts/text-provider.tsx';
import { Button } from './button.tsx';
import styles from './file-drop.module.css';

export interface PhotoInputProps {
  readonly label: string;
  readonly hint?: string;
  readonly photos: readonly Blob[];
  readonly onAdd: (photos: readonly File[]) => void;
  readonly onRemove: (photo: Blob) => void;
}

/** Photos taken on the spot or chosen from the device, each with a way to take it back. */
export function PhotoInput({ label, hint, photos, onAdd, onRemove }: PhotoInputProps) {
  const text = useText('ui');
  return (
    <div className={styles.group}>
      <label className={styles.drop}>
        <strong>{label}</strong>
        <input
          type="file"
          className={styles.input}
          accept="image/*"
          capture="environment"
          multiple
          onChange={(event) => {
            onAdd([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
        <span className={styles.act}>{text('add-photo')}</span>
        {hint !== undefined && <span className={styles.soft}>{hint}</span>}
      </label>
      {photos.length > 0 && (
        <ul className={styles.photos}>
          {photos.map((photo, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a photo has no name before it is stored
            <li key={index} className={styles.photo}>
              <Picture photo={photo} name={text('photo-of', { number: index + 1 })} />
              <Button kind="quiet" label={text('remove-photo', { number: index + 1 })} onClick={() => onRemove(photo)}>
                {text('remove')}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Picture({ photo, name }: { photo: Blob; name: string }) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(photo);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [photo]);
  return address === undefined ? null : <img className={styles.picture} src={address} alt={name} />;
}
