const WIDTH = 480;

/** A small upright picture of a photo at once, or null when the browser cannot open its format. */
export async function thumbnailOf(file: Blob): Promise<string | null> {
  try {
    const bitmap = await createImageBitmap(file, { resizeWidth: WIDTH, resizeQuality: 'low' });
    const canvas = document.createElement('canvas');
    canvas.width = bitmap.width;
    canvas.height = bitmap.height;
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
    bitmap.close();
    return canvas.toDataURL('image/jpeg', 0.8);
  } catch {
    return null;
  }
}
