/** A video, ready to be played; its first picture stands until then, which some phones show only when they are asked for a moment of it. */
export function Film({ src, label }: { readonly src: string; readonly label: string }) {
  // oxlint-disable-next-line jsx-a11y/media-has-caption -- water as somebody filmed it; there are no words to write out
  return <video className="photo-video" controls playsInline preload="metadata" src={`${src}#t=0.001`} aria-label={label} />;
}
