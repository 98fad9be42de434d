/** What is used of libheif's interface for C, built to WebAssembly: numbers are addresses in its memory. */
declare module 'libheif-js/wasm-bundle.js' {
  interface Libheif {
    /** Its memory; another array once it has grown. */
    readonly HEAPU8: Uint8Array;
    _malloc(bytes: number): number;
    _free(at: number): void;
    _heif_context_alloc(): number;
    _heif_context_free(context: number): void;
    _heif_context_read_from_memory_without_copy(
      error: number,
      context: number,
      bytes: number,
      length: number,
      options: number,
    ): void;
    _heif_context_get_primary_image_ID(error: number, context: number, item: number): void;
    _heif_context_get_primary_image_handle(error: number, context: number, handle: number): void;
    _heif_image_handle_release(handle: number): void;
    _heif_image_handle_get_color_profile_type(handle: number): number;
    _heif_image_handle_get_raw_color_profile_size(handle: number): number;
    _heif_image_handle_get_raw_color_profile(error: number, handle: number, to: number): void;
    _heif_image_handle_get_nclx_color_profile(error: number, handle: number, nclx: number): void;
    _heif_nclx_color_profile_free(nclx: number): void;
    _heif_item_get_item_type(context: number, item: number): number;
    _heif_context_get_item_references(
      context: number,
      item: number,
      index: number,
      type: number,
      items: number,
    ): number;
    _heif_release_item_references(context: number, items: number): void;
    _heif_item_get_item_data(
      error: number,
      context: number,
      item: number,
      compression: number,
      data: number,
      length: number,
    ): void;
    _heif_release_item_data(context: number, data: number): void;
    _heif_decode_image(
      error: number,
      handle: number,
      image: number,
      colourspace: number,
      chroma: number,
      options: number,
    ): void;
    _heif_image_release(image: number): void;
    _heif_image_get_decoding_warnings(
      image: number,
      first: number,
      warnings: number,
      most: number,
    ): number;
    _heif_image_get_width(image: number, channel: number): number;
    _heif_image_get_height(image: number, channel: number): number;
    _heif_image_get_plane_readonly(image: number, channel: number, stride: number): number;
  }
  const libheif: Libheif;
  export default libheif;
}
