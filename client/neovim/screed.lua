-- Screed in Neovim 0.7 and later: knows .screed files and starts the language server for them.
-- In init.lua:  dofile('/path/to/screed.lua').setup()
-- or, with the file in lua/screed.lua of the configuration folder:  require('screed').setup()
local M = {}

-- The nearest folder above that is under version control, else the file's own: includes stay inside it.
local function root_of(path)
  local folder = vim.fn.fnamemodify(path, ':p:h')
  local found = vim.fn.finddir('.git', vim.fn.escape(folder, ' ,;') .. ';')
  return found == '' and folder or vim.fn.fnamemodify(found, ':p:h:h')
end

local running = {}

-- One server for a root, also where vim.lsp.start (0.8) does not exist yet.
local function attach(options, buffer)
  local root = root_of(vim.api.nvim_buf_get_name(buffer))
  local config = vim.tbl_extend('force', options, { root_dir = root })
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
    return
  end
  local id = running[root]
  if id == nil or vim.lsp.get_client_by_id(id) == nil then
    id = vim.lsp.start_client(config)
    running[root] = id
  end
  if id ~= nil then
    vim.lsp.buf_attach_client(buffer, id)
  end
end

-- A few colours for where the server sends none (before 0.9).
local function colour()
  vim.cmd([[
    syntax match screedWord /^\s*\zs[A-Za-z][A-Za-z0-9-]*/
    syntax match screedText /\(^\|[^0-9½¼¾]\)\zs"\([^"]\|""\)*"/
    syntax match screedComment /\(^\|\s\)\zs#\([^0-9].*\)\?$/
    highlight default link screedWord Keyword
    highlight default link screedText String
    highlight default link screedComment Comment
  ]])
end

-- options: what vim.lsp.start takes; `cmd` where the server is not on the PATH.
function M.setup(options)
  options = vim.tbl_extend('keep', options or {}, { name = 'screed', cmd = { 'screed-language-server', '--stdio' } })
  local group = vim.api.nvim_create_augroup('screed', { clear = true })
  vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
    group = group,
    pattern = '*.screed',
    callback = function()
      vim.bo.filetype = 'screed'
    end,
  })
  vim.api.nvim_create_autocmd('FileType', {
    group = group,
    pattern = 'screed',
    callback = function(event)
      vim.bo.commentstring = '# %s'
      vim.bo.expandtab = true
      vim.bo.shiftwidth = 2
      vim.bo.softtabstop = 2
      colour()
      -- From 0.11 on the editor starts the server itself, see below.
      if not (vim.lsp.config and vim.lsp.enable) then
        attach(options, event and event.buf or vim.api.nvim_get_current_buf())
      end
    end,
  })
  if vim.lsp.config and vim.lsp.enable then
    vim.lsp.config(options.name, vim.tbl_extend('keep', options, { filetypes = { 'screed' }, root_markers = { '.git' } }))
    vim.lsp.enable(options.name)
  end
end

return M
