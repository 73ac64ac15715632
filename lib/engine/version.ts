/** Version of the engine: stands in every result. A change that alters numbers raises it and says "results change" in the changelog. */
export const ENGINE_VERSION = '0.1.0';
