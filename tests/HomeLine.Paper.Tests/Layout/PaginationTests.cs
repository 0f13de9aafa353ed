using CsCheck;
using HomeLine.Paper.Layout.Typesetting;

namespace HomeLine.Paper.Tests;

public class PaginationTests
{
    [Fact]
    public void Pieces_fill_a_page_and_go_on_to_the_next() =>
        Assert.Equal([3, 1], Deal(Of(30), Of(30), Of(30), Of(30)));

    [Fact]
    public void A_piece_that_keeps_with_the_next_moves_with_it() =>
        Assert.Equal([2, 2], Deal(Of(30), Of(30), Of(30, keep: true), Of(30)));

    [Fact]
    public void Room_above_is_dropped_at_the_top_of_a_page()
    {
        var pages = Pagination.Deal([Of(90), Of(90) with { SpaceBefore = 20 }], 100, 100);
        Assert.Equal(0, pages[1][0].Y);
    }

    [Fact]
    public void The_header_row_returns_above_a_row_that_starts_a_page()
    {
        var header = Of(10, keep: true);
        var pages = Pagination.Deal([header, Of(80) with { Repeats = header }, Of(80) with { Repeats = header }], 100, 100);
        Assert.Equal([false, false], pages[0].Select(placed => placed.Again));
        Assert.Equal([true, false], pages[1].Select(placed => placed.Again));
        Assert.Equal(10, pages[1][1].Y);
    }

    [Fact]
    public void Nothing_still_makes_one_page() => Assert.Equal([0], Deal());

    [Fact]
    public void Whatever_the_heights_every_piece_is_placed_once_in_order_inside_its_page() =>
        Gen.Select(Gen.Int[1, 100], Gen.Bool).Array[0, 40].Sample(specs =>
        {
            var pieces = specs.Select(spec => Of(spec.Item1, spec.Item2)).ToArray();
            var pages = Pagination.Deal(pieces, 80, 100);
            Assert.Equal(pieces, pages.SelectMany(page => page).Select(placed => placed.Piece));
            Assert.All(pages.Skip(1), page => Assert.All(page, placed => Assert.True(placed.Y + placed.Piece.Height <= 100)));
        });

    private static Piece Of(double height, bool keep = false) => new() { Height = height, KeepWithNext = keep, Paint = (_, _, _) => { } };

    private static IEnumerable<int> Deal(params Piece[] pieces) => Pagination.Deal(pieces, 100, 100).Select(page => page.Length);
}
