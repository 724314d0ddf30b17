-- Run inside Neovim by neovim.test.ts: opens each plan it is given, writes down the diagnostics it sees, repairs it
-- (or makes a comment of the line of the first one), and writes down what is left.
local arguments = vim.fn.json_decode(table.concat(vim.fn.readfile(vim.env.SCREED_JOURNEY), '\n'))
dofile(arguments.plugin).setup({ cmd = arguments.command })

local function seen()
  return vim.tbl_map(function(each)
    local lsp = (each.user_data or {}).lsp or {}
    return { line = each.lnum, from = each.col, to = each.end_col, severity = each.severity, code = each.code or lsp.code, message = each.message }
  end, vim.diagnostic.get(0))
end

local function shows(first, repair)
  for _, each in ipairs(seen()) do
    if each.code == first.code and (repair or each.message == first.message) then
      return true
    end
  end
  return false
end

local results = {}
for _, file in ipairs(arguments.files) do
  vim.cmd('edit ' .. vim.fn.fnameescape(file))
  local result = { file = file, filetype = vim.bo.filetype }
  result.came = vim.wait(arguments.patience, function()
    return #vim.diagnostic.get(0) > 0
  end, 10)
  result.before = seen()
  local first = result.before[1]
  local repair = arguments.repairs[vim.fn.fnamemodify(file, ':t')]
  for _, each in ipairs(repair and result.before or {}) do
    if each.code == repair[3] then
      first = each
    end
  end
  if first ~= nil then
    local lines = vim.api.nvim_buf_get_lines(0, 0, -1, false)
    for number, line in ipairs(lines) do
      local from, to = line:find(repair and repair[1] or '', 1, true)
      if repair and from and line:sub(1, 1) ~= '#' then
        local mended = line:sub(1, from - 1) .. repair[2] .. line:sub(to + 1)
        vim.api.nvim_buf_set_lines(0, number - 1, number, false, { mended })
        result.repaired = true
        break
      end
    end
    if not repair then
      vim.api.nvim_buf_set_lines(0, first.line, first.line + 1, false, { '# ' .. lines[first.line + 1] })
    end
    result.went = vim.wait(arguments.patience, function()
      return not shows(first, repair)
    end, 10)
    result.after = seen()
  end
  table.insert(results, result)
end
vim.fn.writefile({ vim.fn.json_encode(results) }, arguments.results)
vim.cmd('qall!')
