using Throwright.Formats.Drawing;

namespace Throwright.Formats.Pdf;

/// <summary>One page: the paper is as large as the drawing.</summary>
/// <param name="Bookmark">Its name in the list beside the pages; null: none.</param>
public sealed record PdfPage(Picture Picture, string? Bookmark = null);

/// <summary>What a document says of itself.</summary>
public sealed record PdfHead(string Title)
{
    public string? Subject { get; init; }

    /// <summary>Language of the text.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Handed in by who asks for the file; null: none is written.</summary>
    public DateTimeOffset? Date { get; init; }
}
