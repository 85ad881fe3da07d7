package org.holdproof.report.seal;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** The metadata packet of a PDF/A-3b file (ISO 16684-1; ISO 19005-3, 6.6). Says exactly what the Info dictionary says. */
final class XmpPacket {
    private static final DateTimeFormatter TO_THE_SECOND =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss'Z'").withZone(ZoneOffset.UTC);

    private XmpPacket() {}

    static byte[] of(DocumentFacts facts, String producer) {
        String written = TO_THE_SECOND.format(facts.created());
        String packet =
                """
                <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
                <x:xmpmeta xmlns:x="adobe:ns:meta/">
                 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                  <rdf:Description rdf:about=""
                    xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
                    xmlns:dc="http://purl.org/dc/elements/1.1/"
                    xmlns:xmp="http://ns.adobe.com/xap/1.0/"
                    xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
                   <pdfaid:part>3</pdfaid:part>
                   <pdfaid:conformance>B</pdfaid:conformance>
                   <dc:format>application/pdf</dc:format>
                   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
                   <dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>
                   <dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
                   <pdf:Producer>%s</pdf:Producer>
                   <xmp:CreateDate>%s</xmp:CreateDate>
                   <xmp:ModifyDate>%s</xmp:ModifyDate>
                   <xmp:MetadataDate>%s</xmp:MetadataDate>
                  </rdf:Description>
                 </rdf:RDF>
                </x:xmpmeta>
                <?xpacket end="r"?>"""
                        .formatted(
                                escaped(facts.title()),
                                escaped(facts.author()),
                                escaped(facts.language()),
                                escaped(producer),
                                written,
                                written,
                                written);
        return packet.getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
