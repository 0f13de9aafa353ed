using HomeLine.Paper.Layout;
using UglyToad.PdfPig.Graphics.Operations;
using UglyToad.PdfPig.Graphics.Operations.MarkedContent;
using UglyToad.PdfPig.Graphics.Operations.PathPainting;
using UglyToad.PdfPig.Graphics.Operations.TextShowing;
using UglyToad.PdfPig.Tokens;

namespace HomeLine.Paper.Tests;

/// <summary>
/// What PDF/UA-1 (ISO 14289-1) asks of a file and a program can check: tagged, language, title shown, identified, fonts embedded with
/// Unicode, everything either in the structure or marked as decoration, table headers scoped. Reading order and wording need a person.
/// </summary>
public class PdfFileTests
{
    public static TheoryData<PaperSize, Edition> EveryCareSheet => new MatrixTheoryData<PaperSize, Edition>(
        Enum.GetValues<PaperSize>(), Enum.GetValues<Edition>());

    [Theory, MemberData(nameof(EveryCareSheet))]
    public void The_file_says_that_it_is_tagged_in_English_and_which_sheet_it_is(PaperSize size, Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.WithWarnings, size, edition));
        Assert.Equal("en-US", Assert.IsType<StringToken>(pdf.Get(pdf.Catalog, "Lang")).Data);
        Assert.Equal("Care sheet 4 for Clover Zigzagby", pdf.Title);
        var marks = Assert.IsType<DictionaryToken>(pdf.Get(pdf.Catalog, "MarkInfo"));
        Assert.True(Assert.IsType<BooleanToken>(pdf.Get(marks, "Marked")).Data);
        var viewer = Assert.IsType<DictionaryToken>(pdf.Get(pdf.Catalog, "ViewerPreferences"));
        Assert.True(Assert.IsType<BooleanToken>(pdf.Get(viewer, "DisplayDocTitle")).Data);
        Assert.Contains("<pdfuaid:part>1</pdfuaid:part>", pdf.Xmp, StringComparison.Ordinal);
        Assert.Contains("Care sheet 4 for Clover Zigzagby", pdf.Xmp, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(EveryCareSheet))]
    public void Everything_drawn_is_in_the_structure_or_marked_as_decoration(PaperSize size, Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.WithWarnings, size, edition));
        Assert.All(pdf.Pages, page => Assert.Empty(Unmarked(page.Operations)));
    }

    [Fact]
    public void Everything_drawn_on_a_day_sheet_is_in_the_structure_or_marked_as_decoration()
    {
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops, PaperSize.Letter));
        Assert.All(pdf.Pages, page => Assert.Empty(Unmarked(page.Operations)));
    }

    [Fact]
    public void The_structure_has_one_main_heading_then_lists_and_a_table_with_scoped_headers()
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
        var structure = pdf.Structure().ToList();
        var types = structure.Select(element => element.Type).ToList();
        Assert.Equal("Document", types[0]);
        Assert.Equal("H1", Assert.Single(types, type => type == "H1"));
        Assert.Equal(5, types.Count(type => type == "H2"));
        Assert.Single(types, type => type == "Table");
        Assert.Equal(7, types.Count(type => type == "TR"));
        Assert.Equal(4, types.Count(type => type == "TH"));
        Assert.Equal(24, types.Count(type => type == "TD"));
        Assert.Equal(5, types.Count(type => type == "L"));
        Assert.True(types.IndexOf("H1") < types.IndexOf("Table"));
        Assert.All(structure.Where(element => element.Type == "TH"), header =>
        {
            var attributes = Assert.IsType<DictionaryToken>(pdf.Get(header.Element, "A"));
            Assert.Equal("Column", Assert.IsType<NameToken>(pdf.Get(attributes, "Scope")).Data);
        });
    }

    [Fact]
    public void A_list_item_has_its_label_and_its_body_and_a_row_only_cells()
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
        var parents = new Stack<string>();
        foreach (var (depth, type, _) in pdf.Structure())
        {
            while (parents.Count > depth)
                parents.Pop();
            var parent = parents.Count == 0 ? "" : parents.Peek();
            var expected = type switch
            {
                "LI" => "L",
                "Lbl" or "LBody" => "LI",
                "TR" => "Table",
                "TH" or "TD" => "TR",
                _ => parent,
            };
            Assert.Equal(expected, parent);
            parents.Push(type);
        }
    }

    [Fact]
    public void The_fonts_are_embedded_as_subsets_and_keep_their_letters_readable()
    {
        var file = CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal);
        using var pdf = new ReadPdf(file);
        var names = pdf.Pages.SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct().ToList();
        Assert.NotEmpty(names);
        Assert.All(names, name => Assert.Matches("^[A-Z]{6}\\+Noto ?Sans", name));
        var text = System.Text.Encoding.Latin1.GetString(file);
        Assert.Equal(2, Occurrences(text, "/FontFile2"));
        Assert.Equal(2, Occurrences(text, "/ToUnicode"));
        Assert.InRange(file.Length, 10_000, 300_000);
    }

    [Theory]
    [InlineData(PaperSize.Letter, 612, 792)]
    [InlineData(PaperSize.A4, 595.276, 841.89)]
    public void The_page_box_is_the_paper_asked_for(PaperSize size, double width, double height)
    {
        // ANSI/ASME Y14.1 size A is 8.5 by 11 inches; ISO 216 A4 is 210 by 297 mm; 72 points to the inch (ISO 32000-1, 8.3.2.3).
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, size, Edition.Normal));
        Assert.All(pdf.Pages, page =>
        {
            Assert.Equal(width, page.MediaBox.Bounds.Width, 0.01);
            Assert.Equal(height, page.MediaBox.Bounds.Height, 0.01);
        });
    }

    [Theory, MemberData(nameof(EveryCareSheet))]
    public void Nothing_is_drawn_outside_the_paper_edge_that_printers_reach(PaperSize size, Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.WithWarnings, size, edition));
        var margin = edition == Edition.LargePrint ? 72 : 24;
        Assert.All(pdf.Pages, page => Assert.All(page.Letters, letter =>
        {
            Assert.InRange(letter.StartBaseLine.X, margin - 0.5, page.Width - margin);
            Assert.InRange(letter.EndBaseLine.X, margin, page.Width - margin + 5);
            Assert.InRange(letter.StartBaseLine.Y, 24, page.Height - margin);
        }));
    }

    [Fact]
    public void The_same_content_gives_the_same_text_and_the_same_identification()
    {
        static byte[] Write() => CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.A4, Edition.Normal);
        using var first = new ReadPdf(Write());
        using var second = new ReadPdf(Write());
        Assert.Equal(first.Text, second.Text);
        Assert.Equal(first.Xmp, second.Xmp);
    }

    [Fact]
    public void Sheets_can_be_written_at_the_same_time()
    {
        var texts = Enumerable.Range(0, 8).AsParallel().WithDegreeOfParallelism(4).Select(_ =>
        {
            using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
            return pdf.Text;
        }).Distinct();
        Assert.Single(texts);
    }

    private static int Occurrences(string text, string part) =>
        text.Split(part).Length - 1;

    private static IEnumerable<IGraphicsStateOperation> Unmarked(IEnumerable<IGraphicsStateOperation> operations)
    {
        var depth = 0;
        foreach (var operation in operations)
        {
            depth += operation switch
            {
                BeginMarkedContent or BeginMarkedContentWithProperties => 1,
                EndMarkedContent => -1,
                _ => 0,
            };
            var draws = operation is ShowText or ShowTextsWithPositioning or StrokePath or FillPathNonZeroWinding
                or FillPathEvenOddRule or FillPathNonZeroWindingAndStroke or CloseAndStrokePath;
            if (draws && depth == 0)
                yield return operation;
        }
    }
}
