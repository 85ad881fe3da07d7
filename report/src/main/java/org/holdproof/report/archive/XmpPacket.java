package org.holdproof.report.archive;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/**
 * The metadata packet of a PDF/A-3 file (ISO 16684-1; ISO 19005-3, 6.6): level A and PDF/UA-1 (ISO 14289-1, 5) where it
 * is tagged, level B where it is not. It says exactly what the Info dictionary says.
 */
final class XmpPacket {
    private static final DateTimeFormatter TO_THE_SECOND =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss'Z'").withZone(ZoneOffset.UTC);

    /** PDF/UA's own property, and its description, which PDF/A asks of properties it does not know (6.6.2.3). */
    private static final String ACCESSIBLE =
            """

                  <rdf:Description rdf:about=""
                    xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
                    xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
                    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
                    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
                   <pdfuaid:part>1</pdfuaid:part>
                   <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
                    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
                    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
                     <pdfaProperty:name>part</pdfaProperty:name>
                     <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                     <pdfaProperty:category>internal</pdfaProperty:category>
                     <pdfaProperty:description>Part of ISO 14289 the file conforms to</pdfaProperty:description>
                    </rdf:li></rdf:Seq></pdfaSchema:property>
                   </rdf:li></rdf:Bag></pdfaExtension:schemas>
                  </rdf:Description>""";

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
                   <pdfaid:conformance>%s</pdfaid:conformance>
                   <dc:format>application/pdf</dc:format>
                   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
                   <dc:creator><rdf:Seq><rdf:li>%s</rdf:li></rdf:Seq></dc:creator>
                   <dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
                   <pdf:Producer>%s</pdf:Producer>
                   <xmp:CreateDate>%s</xmp:CreateDate>
                   <xmp:ModifyDate>%s</xmp:ModifyDate>
                   <xmp:MetadataDate>%s</xmp:MetadataDate>
                  </rdf:Description>%s
                 </rdf:RDF>
                </x:xmpmeta>
                <?xpacket end="r"?>"""
                        .formatted(
                                facts.tagged() ? "A" : "B",
                                escaped(facts.title()),
                                escaped(facts.author()),
                                escaped(facts.language()),
                                escaped(producer),
                                written,
                                written,
                                written,
                                facts.tagged() ? ACCESSIBLE : "");
        return packet.getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
