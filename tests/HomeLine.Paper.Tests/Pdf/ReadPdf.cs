using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace HomeLine.Paper.Tests;

/// <summary>Reads a finished file back with a reader that shares no code with the writer.</summary>
internal sealed class ReadPdf : IDisposable
{
    private readonly PdfDocument document;

    public ReadPdf(byte[] file) => document = PdfDocument.Open(file);

    public IReadOnlyList<Page> Pages => [.. document.GetPages()];

    public DictionaryToken Catalog => document.Structure.Catalog.CatalogDictionary;

    public string? Title => document.Information.Title;

    public string Xmp => document.TryGetXmpMetadata(out var xmp) ? Encoding.UTF8.GetString(xmp.GetXmlBytes().ToArray()) : "";

    /// <summary>All drawn text in drawing order, without any white space: line ends and gaps carry no meaning.</summary>
    public string Text => string.Concat(Pages.SelectMany(page => page.Letters).Select(letter => letter.Value))
        .Replace(" ", "", StringComparison.Ordinal);

    public string TextOf(int page) => string.Concat(Pages[page].Letters.Select(letter => letter.Value));

    /// <summary>Follows references until a value stands there.</summary>
    public IToken Resolve(IToken token) => token is IndirectReferenceToken reference
        ? Resolve(document.Structure.GetObject(reference.Data).Data)
        : token;

    public IToken? Get(DictionaryToken dictionary, string key) =>
        dictionary.TryGet(NameToken.Create(key), out var token) ? Resolve(token) : null;

    /// <summary>The structure tree as indented types, for example <c>Table</c> above <c>TR</c> above <c>TH</c>.</summary>
    public IEnumerable<(int Depth, string Type, DictionaryToken Element)> Structure()
    {
        var root = (DictionaryToken)Get(Catalog, "StructTreeRoot")!;
        return Walk(Get(root, "K")!, 0);
    }

    public void Dispose() => document.Dispose();

    private IEnumerable<(int Depth, string Type, DictionaryToken Element)> Walk(IToken token, int depth)
    {
        switch (Resolve(token))
        {
            case ArrayToken kids:
                foreach (var found in kids.Data.SelectMany(kid => Walk(kid, depth)))
                    yield return found;
                break;
            case DictionaryToken element when Get(element, "S") is NameToken type:
                yield return (depth, type.Data, element);
                if (Get(element, "K") is { } children)
                {
                    foreach (var found in Walk(children, depth + 1))
                        yield return found;
                }

                break;
        }
    }
}
