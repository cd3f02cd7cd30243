using System.Net;
using Microsoft.AspNetCore.Http;

namespace Throwright.Web.Host;

/// <summary>Lets in only what comes from this computer and from our own page.</summary>
/// <remarks>
/// A page from elsewhere that runs in the same browser could otherwise send requests here (cross-site), or could have its own name
/// resolved to this computer and then count as same origin (DNS rebinding). So: the name asked for must be a name of this computer,
/// and whatever changes something, or opens a socket, must come from our own address.
/// </remarks>
internal static class Gate
{
    private static readonly string[] Names = ["127.0.0.1", "localhost", "[::1]"];

    public static async Task Pass(HttpContext context, Func<Task> next)
    {
        Protect(context);
        if (Refusal(context) is { } refusal)
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            context.Response.ContentType = "text/plain; charset=utf-8";
            await context.Response.WriteAsync(refusal, context.RequestAborted).ConfigureAwait(false);
            return;
        }

        await next().ConfigureAwait(false);
    }

    private static string? Refusal(HttpContext context)
    {
        var request = context.Request;
        if (context.Connection.RemoteIpAddress is { } from && !IPAddress.IsLoopback(from))
            return "Only this computer is answered.";
        if (!Names.Contains(request.Host.Host, StringComparer.OrdinalIgnoreCase))
            return "This address is not answered. Open the page by the address that throwright serve has printed.";
        var origin = request.Headers.Origin.ToString();
        var own = $"{request.Scheme}://{request.Host.Value}";
        var isOwn = string.Equals(origin, own, StringComparison.OrdinalIgnoreCase);
        if (origin.Length > 0 && !isOwn)
            return "Requests of other pages are not answered.";
        var changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        var isSocket = context.WebSockets.IsWebSocketRequest || request.Headers.ContainsKey("Sec-WebSocket-Key");
        if ((changes || isSocket) && !isOwn)
            return "Requests without a sender are not answered here.";
        // A link from elsewhere may open the page; a picture, script or frame from here is nobody's business.
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        return site is "cross-site" or "same-site" && request.Headers["Sec-Fetch-Mode"] != "navigate" ? "Requests of other pages are not answered." : null;
    }

    private static void Protect(HttpContext context)
    {
        var headers = context.Response.Headers;
        var host = context.Request.Host.Value;
        // No script and no style stands in the page itself; pictures may be made in the browser (blob:, data:).
        headers.ContentSecurityPolicy = $"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self' ws://{host}; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        // "no-referrer" would also take the sender from our own forms.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
    }
}
