import type { BuiltProfile, Pipe, PipeShot } from '@yardfall/calc';
import { pipeProfile } from '@yardfall/drawing';
import { Drawing } from '../../../components/Drawing.tsx';
import { useText } from '../../../lib/reader.tsx';

interface ProfilePictureProps {
  readonly pipe: Pipe;
  readonly shots: readonly PipeShot[];
  readonly built: BuiltProfile;
}

/** This pipe alone, so that a quarter of an inch is seen; its words stand above it. */
export function ProfilePicture({ pipe, shots, built }: ProfilePictureProps) {
  const { t } = useText();
  return <Drawing title={t('checklists.profile.picture')} height={() => 220} display={(size) => pipeProfile({ designed: pipe, shots, built }, size)} table={null} />;
}
