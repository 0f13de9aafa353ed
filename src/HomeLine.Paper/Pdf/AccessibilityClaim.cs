using System.Globalization;
using System.Text;
using HomeLine.Paper.Layout;
using NodaTime.Text;

namespace HomeLine.Paper.Pdf;

/// <summary>
/// Puts the PDF/UA identification (ISO 14289-1, clause 5) into a finished file. The package writes its metadata while saving and offers no
/// way to add to it, so the packet, which stands in the file as plain text, is replaced by ours, filled up with spaces to the same length:
/// no offset in the file moves. The packet then holds no random id either.
/// </summary>
internal static class AccessibilityClaim
{
    private static readonly byte[] StreamStart = "stream\n<?xpacket begin="u8.ToArray();
    private static readonly byte[] StreamEnd = "\nendstream"u8.ToArray();
    private static readonly byte[] PacketEnd = "<?xpacket end=\"w\"?>"u8.ToArray();

    /// <remarks>The marks searched for hold a line end, which no title has; so no title can be mistaken for them.</remarks>
    /// <exception cref="InvalidOperationException">The file holds no packet, or one too short for ours: another version of the package.</exception>
    public static byte[] Add(byte[] file, PaperDocument document, string title)
    {
        var stream = file.AsSpan().LastIndexOf(StreamStart);
        var start = stream + "stream\n".Length;
        var streamLength = stream < 0 ? 0 : file.AsSpan(start).IndexOf(StreamEnd);
        var length = file.AsSpan(start, streamLength).LastIndexOf(PacketEnd);
        var packet = Encoding.UTF8.GetBytes(Packet(document, title));
        if (length < packet.Length)
            throw new InvalidOperationException("The file has no room for its accessibility metadata.");
        file.AsSpan(start, length).Fill((byte)' ');
        packet.CopyTo(file, start);
        return file;
    }

    private static string Packet(PaperDocument document, string title)
    {
        var printed = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss").Format(document.PrintedAt);
        return string.Create(CultureInfo.InvariantCulture, $"""
            <?xpacket begin="{'\uFEFF'}" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
            <pdfuaid:part>1</pdfuaid:part>
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default"><![CDATA[{title.Replace("]]>", "] >", StringComparison.Ordinal)}]]></rdf:li></rdf:Alt></dc:title>
            <dc:language><rdf:Bag><rdf:li>{document.Language}</rdf:li></rdf:Bag></dc:language>
            <xmp:CreatorTool>HomeLine</xmp:CreatorTool><xmp:CreateDate>{printed}</xmp:CreateDate><xmp:ModifyDate>{printed}</xmp:ModifyDate>
            </rdf:Description></rdf:RDF></x:xmpmeta>

            """).Replace("\r", "", StringComparison.Ordinal);
    }
}
