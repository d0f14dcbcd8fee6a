-- wrk: one request again and again, given in the file REQUEST; prints
-- "requests/s p50 p99 faults requests".
wrk.method = "POST"
wrk.headers["Content-Type"] = "application/json"
local file = io.open(os.getenv("REQUEST"), "rb")
wrk.body = file:read("*a")
file:close()

function done(summary, latency)
    local faults = summary.errors.status + summary.errors.connect + summary.errors.read
        + summary.errors.write + summary.errors.timeout
    io.write(string.format("RESULT %.0f %.3f %.3f %d %d\n", summary.requests / (summary.duration / 1e6),
        latency:percentile(50) / 1e3, latency:percentile(99) / 1e3, faults, summary.requests))
    if faults > 0 then
        io.stderr:write(string.format("wrk: %d wrong statuses, %d connects, %d reads, %d writes, %d timeouts\n",
            summary.errors.status, summary.errors.connect, summary.errors.read, summary.errors.write,
            summary.errors.timeout))
    end
end
