using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Http;

namespace Throwright.Web;

/// <summary>Scripts, style, fonts and mark of the page, carried inside this assembly: nothing comes from elsewhere.</summary>
public static class PageFiles
{
    private const string Prefix = "page/";
    private static readonly FrozenDictionary<string, (byte[] Bytes, string Tag)> All = Load();

    /// <summary>False: built without the page's scripts and style (SkipWeb).</summary>
    public static bool AreThere => All.ContainsKey("app.css") && All.ContainsKey("page.js") && All.ContainsKey("blazor.web.js");

    /// <summary>Address of a file; it changes with the content, so that a browser never shows an old one.</summary>
    public static string Url(string name) => All.TryGetValue(name, out var file) ? $"/app/{name}?v={file.Tag[..12]}" : $"/app/{name}";

    /// <summary>The text of one of the files, for tests.</summary>
    public static string? Text(string name) => All.TryGetValue(name, out var file) ? System.Text.Encoding.UTF8.GetString(file.Bytes) : null;

    public static IEnumerable<string> Names => All.Keys;

    internal static async Task Serve(HttpContext context, string name)
    {
        if (!All.TryGetValue(name, out var file))
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var response = context.Response;
        var tag = $"\"{file.Tag}\"";
        response.Headers.ETag = tag;
        response.Headers.CacheControl = context.Request.Query.ContainsKey("v") ? "private, max-age=31536000, immutable" : "no-cache";
        if (context.Request.Headers.IfNoneMatch == tag)
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.ContentType = Path.GetExtension(name) switch
        {
            ".js" => "text/javascript; charset=utf-8",
            ".css" => "text/css; charset=utf-8",
            ".svg" => "image/svg+xml",
            ".woff2" => "font/woff2",
            _ => "text/plain; charset=utf-8",
        };
        response.ContentLength = file.Bytes.Length;
        if (HttpMethods.IsGet(context.Request.Method))
            await response.Body.WriteAsync(file.Bytes, context.RequestAborted).ConfigureAwait(false);
    }

    private static FrozenDictionary<string, (byte[] Bytes, string Tag)> Load()
    {
        var own = Assembly.GetExecutingAssembly();
        return own.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).ToFrozenDictionary(n => n[Prefix.Length..], n =>
        {
            using var stream = own.GetManifestResourceStream(n)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return (bytes, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        });
    }
}
