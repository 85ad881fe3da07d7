package org.holdproof.core.input;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** Strict UTF-8. */
final class Utf8 {
    private Utf8() {}

    /** The text, a leading byte-order mark dropped. */
    static String decode(Place file, byte[] bytes) throws UnreadableInputException {
        if (bytes.length >= 2 && (bytes[0] == (byte) 0xFF || bytes[0] == (byte) 0xFE) && (bytes[0] ^ bytes[1]) == 1) {
            throw file.fault("UTF-16 text", "UTF-8 text", "Save it again with the encoding UTF-8.");
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw file.fault(
                    "bytes that are not UTF-8 text",
                    "UTF-8 text",
                    "Save it again with the encoding UTF-8; a degree sign or an accent is the usual cause.");
        }
    }
}
